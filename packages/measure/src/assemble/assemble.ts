/** A scenario of a skeleton and data: each task, stop and share that was measured goes to its place, with where it comes from. */
import { listWords } from '@loopwright/line'
import { nearest, putIntoText, readScenario, type ReadOptions, type Scenario, type TextChange } from '@loopwright/scenario'
import { distributionMean } from '@loopwright/stats'
import { type MixStudy, stretchesOf } from '../mix/mixStudy.ts'
import { mixParts } from '../mix/mixParts.ts'
import type { StopStudy } from '../stops/stopStudy.ts'
import { plainWord as plain } from '../table/heads.ts'
import { timeParts, type TimeSource } from '../times/timeParts.ts'
import type { TaskTimes } from '../times/timeStudy.ts'
import { step, type TimePlace, timePlaceOf, timePlaces } from './besideTasks.ts'
import { stopChanges } from './stopChanges.ts'

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
  /** what that text says; null: as there */
  readonly scenario: Scenario | null
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
  const nothing = { text: null, scenario: null }
  if (scenario === null)
    return { ...nothing, changes: [], faults: problems.map(({ line, message }) => `the skeleton, line ${line}: ${message}`), notes: [] }
  const faults: string[] = []
  const notes: string[] = []
  const changes = [
    ...mixChanges(scenario, data, faults),
    ...timeChanges(scenario, skeleton, data, faults, notes),
    ...stopChanges(scenario, data.stops, faults, notes),
  ]
  if (faults.length > 0) return { ...nothing, changes, faults, notes }
  const whole = written(skeleton, changes, files)
  if (whole !== null && whole.problems.length === 0) return { text: whole.text, scenario: whole.scenario, changes, faults, notes }
  // lists of single stretches do not go with every scenario; shares do
  const plainChanges = changes.filter(({ path }) => !path.startsWith('variations.'))
  const short = plainChanges.length < changes.length ? written(skeleton, plainChanges, files) : whole
  if (short === null) return { ...nothing, changes, faults: ['a place of the skeleton is no map where data are to go'], notes }
  if (short.problems.length > 0) return { ...nothing, changes, faults: short.problems, notes }
  const left = 'The lists of the heaviest stretches are left out: they do not go with the options of the skeleton.'
  return { text: short.text, scenario: short.scenario, changes: plainChanges, faults, notes: [...notes, left] }
}

/** The text with the changes, and what is wrong with it then. */
function written(
  skeleton: string,
  changes: readonly TextChange[],
  files: ReadOptions,
): { readonly text: string; readonly scenario: Scenario | null; readonly problems: readonly string[] } | null {
  const text = putIntoText(skeleton, changes)
  if (text === null) return null
  const { scenario, problems } = readScenario(text, files)
  return {
    text,
    scenario,
    problems: problems.filter(({ severity }) => severity === 'error').map(({ path, message }) => `with the data, ${path}: ${message}`),
  }
}

/** a mean that far times move by more is told: own rule, no source */
const MOVED_SHARE = 0.1
/** times that a note names */
const NAMED_MAX = 6

/** Times far from the others that make the mean another one. */
function farNote({ task, variant, mean, outliers }: TaskTimes): string[] {
  if (outliers === null || Math.abs(mean / outliers.meanWithout - 1) <= MOVED_SHARE) return []
  const seconds = (value: number): string => `${Number(value.toPrecision(3))} s`
  const which = outliers.observations.map(({ line, observedSeconds }) => `line ${line}: ${seconds(observedSeconds)}`)
  return [
    `Times of "${task}"${variant === null ? '' : `, ${variant},`} lie far from the others and are kept (${listWords(which, NAMED_MAX)}): with them the mean is ${seconds(mean)}, without ${seconds(outliers.meanWithout)}.`,
  ]
}

/** The remedy for a skeleton that says nothing of its products. */
const ifPlain = (variants: readonly string[]): string =>
  variants.length === 1 && variants[0] === 'product'
    ? ' alone: name them in the skeleton, such as "products: { variants: { small: 60 %, large: 40 % } }"'
    : ''

/** A sentence for each thing of the skeleton that the tables call by several names: one of them would be lost. */
function oneEach(meant: ReadonlyMap<string, string>, start: string, whole: (own: string) => string): string[] {
  const names = new Map<string, string[]>()
  for (const [name, own] of meant) names.set(own, [...(names.get(own) ?? []), name])
  return [...names]
    .filter(([, all]) => all.length > 1)
    .map(([own, all]) => `${start} ${all.map((name) => `"${name}"`).join(' and ')}: all are ${whole(own)}; write one name in the tables`)
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
  faults.push(...oneEach(found, 'times of', (own) => `the task "${own}" of the skeleton`))
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
      faults.push(
        `times of "${measured}": the skeleton has no variant ${strange.join(', ')}; it has ${variants.join(', ')}${ifPlain(variants)}`,
      )
    const written = times.studies.filter(({ task }) => task === measured).flatMap(({ variant }) => variant ?? [])
    const variantOf = new Map(written.map((name) => [name, variants.find((one) => plain(one) === plain(name))!]))
    if (strange.length === 0) faults.push(...oneEach(variantOf, `times of "${measured}", variants`, (name) => `"${name}" of the skeleton`))
    const needed = variants.filter((name) => hasTask(name, own))
    const missing = told.some(({ variant }) => variant === null)
      ? []
      : needed.filter((name) => !told.some(({ variant }) => variant === name))
    if (strange.length === 0 && missing.length > 0)
      faults.push(
        `times of "${measured}": none of ${missing.map((name) => `"${name}"`).join(', ')}; time ${missing.length === 1 ? 'it' : 'them'}, or leave the column of variants out`,
      )
  }
  for (const one of times.studies) notes.push(...farNote(one))
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
      `orders of ${strange.map((name) => `"${name}"`).join(', ')}: the skeleton has no such product; it has ${variants.join(', ')}${options.length === 0 ? '' : `, with ${options.join(', ')}`}${ifPlain(variants)}`,
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
