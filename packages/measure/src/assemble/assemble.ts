/** A scenario of a skeleton and data: each task, stop and share that was measured goes to its place, with where it comes from. */
import { nearest, putIntoText, readScenario, type ReadOptions, type Scenario, type TextChange } from '@loopwright/scenario'
import { distributionMean } from '@loopwright/stats'
import { type MixStudy, stretchesOf } from '../mix/mixStudy.ts'
import { mixParts } from '../mix/mixParts.ts'
import { stopParts } from '../stops/stopParts.ts'
import type { StopStudy } from '../stops/stopStudy.ts'
import { plainWord as plain } from '../table/heads.ts'
import { timeParts, type TimeSource } from '../times/timeParts.ts'
import type { TaskTimes } from '../times/timeStudy.ts'
import { step, type TimePlace, timePlaceOf, timePlaces } from './besideTasks.ts'

/** What was measured; null: nothing of that kind. */
export interface MeasuredData {
  readonly times: { readonly studies: readonly TaskTimes[]; readonly source: TimeSource } | null
  readonly stops: { readonly study: StopStudy; readonly file: string } | null
  readonly mix: { readonly study: MixStudy; readonly file: string } | null
}

/** A scenario, put together. */
export interface Assembly {
  /** the skeleton with the data in it; null: something does not fit */
  readonly text: string | null
  readonly changes: readonly TextChange[]
  /** sentences: what does not fit, and how to mend it */
  readonly faults: readonly string[]
  /** sentences: what stays a guess of the skeleton, and what counts twice */
  readonly notes: readonly string[]
}

/**
 * The skeleton with the data put in.
 *
 * @param skeleton  text of a scenario that reads; its guesses stand where nothing was measured
 * @param files     texts of tables that it names
 * @example assemble(text, { times: null, stops: null, mix: null }).changes // => []
 */
export function assemble(skeleton: string, data: MeasuredData, files: ReadOptions = {}): Assembly {
  const { scenario, problems } = readScenario(skeleton, files)
  if (scenario === null)
    return { text: null, changes: [], faults: problems.map(({ line, message }) => `the skeleton, line ${line}: ${message}`), notes: [] }
  const faults: string[] = []
  const notes: string[] = []
  const changes = [
    ...mixChanges(scenario, data, faults),
    ...timeChanges(scenario, skeleton, data, faults, notes),
    ...stopChanges(scenario, data, faults, notes),
  ]
  if (faults.length > 0) return { text: null, changes, faults, notes }
  const whole = written(skeleton, changes, files)
  if (whole !== null && whole.problems.length === 0) return { text: whole.text, changes, faults, notes }
  // lists of single stretches do not go with every scenario; shares do
  const plainChanges = changes.filter(({ path }) => !path.startsWith('variations.'))
  const short = plainChanges.length < changes.length ? written(skeleton, plainChanges, files) : whole
  if (short === null) return { text: null, changes, faults: ['a place of the skeleton is no map where data are to go'], notes }
  if (short.problems.length > 0) return { text: null, changes, faults: short.problems, notes }
  const left = 'The lists of the heaviest stretches are left out: they do not go with the options of the skeleton.'
  return { text: short.text, changes: plainChanges, faults, notes: [...notes, left] }
}

/** The text with the changes, and what is wrong with it then. */
function written(
  skeleton: string,
  changes: readonly TextChange[],
  files: ReadOptions,
): { readonly text: string; readonly problems: readonly string[] } | null {
  const text = putIntoText(skeleton, changes)
  if (text === null) return null
  const { problems } = readScenario(text, files)
  return {
    text,
    problems: problems.filter(({ severity }) => severity === 'error').map(({ path, message }) => `with the data, ${path}: ${message}`),
  }
}

/** Names of the scenario as written: the variants without options. */
const baseVariants = ({ line }: Scenario): string[] => [...new Set(line.variants.map((name) => name.split(' + ')[0]!))]

function timeChanges(scenario: Scenario, skeleton: string, { times }: MeasuredData, faults: string[], notes: string[]): TextChange[] {
  const { line, titles } = scenario
  const duties = ['unload', 'load', 'work'] as const
  const places = line.stations.flatMap((station) =>
    duties.flatMap((duty) =>
      (station[duty] ?? []).map(({ task, seconds }) => ({
        task: line.tasks[task]!,
        path: `stations.${step(station.name)}.${duty}.${step(line.tasks[task]!)}`,
        seconds,
      })),
    ),
  )
  if (times === null) {
    if (places.length > 0) notes.push('No times were measured: all times are those of the skeleton.')
    return []
  }
  const variants = baseVariants(scenario)
  const hasTask = (variant: string, task: string): boolean => {
    const { seconds } = places.find((place) => place.task === task)!
    return seconds[line.variants.findIndex((one) => one === variant || one.startsWith(`${variant} + `))] !== null
  }
  const names = [...new Set(places.map(({ task }) => task))]
  const found = new Map<string, string>()
  const beside = new Map<string, TimePlace>()
  for (const measured of new Set(times.studies.map(({ task }) => task))) {
    const own =
      names.find((name) => name === measured) ??
      names.find((name) => plain(name) === plain(measured) || plain(titles.tasks[name] ?? name) === plain(measured))
    const place = own === undefined ? timePlaceOf(scenario, skeleton, measured) : null
    if (own !== undefined) found.set(measured, own)
    else if (place !== null) beside.set(measured, place)
    else {
      const others = timePlaces(scenario, skeleton).map(({ name }) => name)
      const near = nearest(measured, [...names, ...others])
      faults.push(
        `times of "${measured}": no station of the skeleton has such a task${near === null ? `; there are ${names.join(', ')}${others.length === 0 ? '' : `, and beside tasks ${others.slice(0, 12).join(', ')}`}` : `; did you mean "${near}"?`}`,
      )
    }
  }
  for (const [measured, { name }] of beside) {
    if (times.studies.some(({ task, variant }) => task === measured && variant !== null))
      faults.push(
        `times of "${measured}": ${name} has one time for all variants; put its times into a table of their own, without variants`,
      )
  }
  const named = times.studies
    .filter(({ task }) => found.has(task))
    .map((one) => ({
      ...one,
      variant: one.variant === null ? null : (variants.find((name) => plain(name) === plain(one.variant!)) ?? one.variant),
    }))
  for (const [measured, own] of found) {
    const told = named.filter(({ task }) => task === measured)
    const strange = told.filter(({ variant }) => variant !== null && !variants.includes(variant)).map(({ variant }) => `"${variant}"`)
    if (strange.length > 0)
      faults.push(`times of "${measured}": the skeleton has no variant ${strange.join(', ')}; it has ${variants.join(', ')}`)
    const needed = variants.filter((name) => hasTask(name, own))
    const missing = told.some(({ variant }) => variant === null)
      ? []
      : needed.filter((name) => !told.some(({ variant }) => variant === name))
    if (strange.length === 0 && missing.length > 0)
      faults.push(
        `times of "${measured}": none of ${missing.map((name) => `"${name}"`).join(', ')}; time ${missing.length === 1 ? 'it' : 'them'}, or leave the column of variants out`,
      )
  }
  const guessed = names.filter((name) => ![...found.values()].includes(name))
  if (guessed.length > 0) notes.push(`Not measured, so the skeleton's times stand: ${guessed.join(', ')}.`)
  const besideTasks = timeParts(
    times.studies.filter(({ task }) => beside.has(task)),
    times.source,
  ).map(({ task, value, from }) => {
    const { path, constant } = beside.get(task)!
    if (!constant) return { path, value, from }
    const { distribution } = times.studies.find((one) => one.task === task)!
    return { path, value: `${Number(distributionMean(distribution).toPrecision(6))} s`, from: `${from}, by their mean` }
  })
  const ofTasks = timeParts(named, times.source).flatMap(({ task, value, from }) => {
    const own = found.get(task)!
    // a variant that does not have the task at all keeps that
    const without = variants.filter((name) => !hasTask(name, own))
    const written =
      without.length > 0 && value.startsWith('{ byVariant: { ')
        ? value.replace(
            '{ byVariant: { ',
            `{ byVariant: { ${without
              .filter((name) => !named.some((one) => one.task === task && one.variant === name))
              .map((name) => `${JSON.stringify(name)}: none, `)
              .join('')}`,
          )
        : value
    return places.filter((place) => place.task === own).map(({ path }) => ({ path, value: written, from }))
  })
  return [...ofTasks, ...besideTasks]
}

function stopChanges({ line, stopEntries }: Scenario, { stops }: MeasuredData, faults: string[], notes: string[]): TextChange[] {
  if (stops === null) {
    notes.push(
      stopEntries.length === 0
        ? 'No stops were logged, and the skeleton has none: nothing breaks down.'
        : 'No stops were logged: all stops are those of the skeleton.',
    )
    return []
  }
  const words = new Map<string, string>()
  for (const { name, title } of line.stations) for (const word of [name, title]) words.set(plain(word), name)
  for (const { name } of line.zones) if (!words.has(plain(name))) words.set(plain(name), name)
  for (const { name } of line.zones) words.set(plain(`transfer ${name}`), `transfer ${name}`)
  for (const { name } of line.sections) if (!words.has(plain(name))) words.set(plain(name), name)
  for (const word of ['line', 'every station', 'every zone', 'every transfer']) words.set(plain(word), word)
  const strange = [...new Set(stops.study.times.map(({ place }) => place))].filter((place) => !words.has(plain(place)))
  const places = [...line.stations.map(({ name }) => name), 'line']
  for (const place of strange)
    faults.push(`stops at "${place}": the skeleton has no such place; there are ${places.slice(0, 12).join(', ')}, zones, transfers`)
  if (strange.length > 0) return []
  notes.push(...logNotes(stops.study))
  return stopParts(stops.study, stops.file, (place) => words.get(plain(place))!).map(({ name, value, from }, index) => {
    const { place, cause } = stops.study.times[index]!
    const own = words.get(plain(place))!
    const same = stopEntries.find(
      (entry) => plain(entry.name) === plain(cause) || plain(entry.title) === plain(cause) || entry.name === name,
    )
    if (same !== undefined) return { path: `stops.${step(same.name)}`, value, from }
    const beside = stopEntries.filter((entry) => entry.sources.some((source) => source.place === own)).map((entry) => entry.name)
    if (beside.length > 0) notes.push(`At ${own} the skeleton has stops already (${beside.join(', ')}): "${cause}" comes on top of them.`)
    return { path: `stops.${step(name)}`, value, from }
  })
}

/** What a stop log leaves open, as its own study tells it at length. */
function logNotes({ endsGuessed, outside, overlaps }: StopStudy): string[] {
  const lines = (all: readonly (number | string)[]): string => `${all.slice(0, 6).join(', ')}${all.length > 6 ? ' and more' : ''}`
  return [
    ...(endsGuessed
      ? ['Nobody said when the stop log began and ended (--from, --to): it is taken from its first start to its last instant.']
      : []),
    ...(outside.length === 0
      ? []
      : [`Stops wholly outside the working hours (--hours) do not count: lines ${lines(outside.map(({ line }) => line))}.`]),
    ...(overlaps.length === 0
      ? []
      : [`Stops lie over each other, and of one cause count once: lines ${lines(overlaps.map(({ lines: [a, b] }) => `${a} with ${b}`))}.`]),
  ]
}

function mixChanges(scenario: Scenario, { mix }: MeasuredData, faults: string[]): TextChange[] {
  if (mix === null) return []
  const { line, variantGroups } = scenario
  const variants = baseVariants(scenario)
  const options = variantGroups
    .map(({ name }) => name)
    .filter((name) => line.variants.some((variant) => variant.split(' + ').slice(1).includes(name)))
  const expanded = mix.study.options.some(({ option }) => !options.includes(option))
  const names = (expanded ? mix.study.variants : mix.study.products).map(({ name }) => name)
  const strange = names.filter((name) => !variants.includes(name) && !line.variants.includes(name))
  if (strange.length > 0) {
    faults.push(
      `orders of ${strange.map((name) => `"${name}"`).join(', ')}: the skeleton has no such product; it has ${variants.join(', ')}${options.length === 0 ? '' : `, with ${options.join(', ')}`}`,
    )
    return []
  }
  const absent = variants.filter((name) => !names.includes(name))
  if (absent.length > 0) {
    faults.push(
      `no order is of ${absent.map((name) => `"${name}"`).join(', ')}, which the skeleton has: take ${absent.length === 1 ? 'it' : 'them'} out of the skeleton, or order one`,
    )
    return []
  }
  const lists = stretchesOf(mix.study, variants).map(({ name, value }) => ({
    path: `variations.${step(name)}`,
    value,
    from: `ordered, ${mix.file}`,
  }))
  return [...mixParts(mix.study, mix.file, options), ...lists]
}
