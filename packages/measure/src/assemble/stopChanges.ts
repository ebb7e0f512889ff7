/** The stops of a log, each at its place of the skeleton: none is lost, and none taken for another. */
import { listWords } from '@loopwright/line'
import type { Scenario, StopEntry, TextChange } from '@loopwright/scenario'
import { stopParts } from '../stops/stopParts.ts'
import type { StopStudy, StopTimes } from '../stops/stopStudy.ts'
import { plainWord as plain } from '../table/heads.ts'
import { step } from './besideTasks.ts'

/** lines of a log that a note names */
const NAMED_MAX = 6

/** Changes of the skeleton; what does not fit goes to `faults`, what stays a guess or counts twice to `notes`. */
export function stopChanges(
  { line, stopEntries }: Scenario,
  stops: { readonly study: StopStudy; readonly file: string } | null,
  faults: string[],
  notes: string[],
): TextChange[] {
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
  const { times } = stops.study
  const placeOf = (part: StopTimes): string => words.get(plain(part.place))!
  const parts = stopParts(stops.study, stops.file, (place) => words.get(plain(place))!)
  // each stop of the skeleton is measured by one part of the log: others of its cause, such as short ones, stand beside it
  const partOf = new Map<StopEntry, number>()
  for (const [index, part] of times.entries()) {
    const same = stopEntries.find((entry) => !partOf.has(entry) && isOf(entry, part, placeOf(part), parts[index]!.name))
    if (same !== undefined) partOf.set(same, index)
  }
  const entryOf = new Map([...partOf].map(([entry, index]) => [index, entry]))
  const keys = new Set(stopEntries.map(({ name }) => name))
  const guessed = stopEntries.filter((entry) => !partOf.has(entry))
  if (guessed.length > 0) notes.push(`Not logged, so the skeleton's stops stand: ${guessed.map(({ name }) => name).join(', ')}.`)
  return parts.map(({ name, value, from }, index) => {
    const same = entryOf.get(index)
    if (same !== undefined) return { path: `stops.${step(same.name)}`, value: titled(value, same), from }
    const part = times[index]!
    const beside = guessed.filter((entry) => standsAt(entry, placeOf(part))).map((entry) => entry.name)
    if (beside.length > 0)
      notes.push(`At ${placeOf(part)} the skeleton has stops already (${beside.join(', ')}): "${part.cause}" comes on top of them.`)
    const key = freeKey(name, keys)
    keys.add(key)
    return { path: `stops.${step(key)}`, value, from }
  })
}

/** A stop of the skeleton and a part of the log that have one cause, and do not stand at different places. */
function isOf(entry: StopEntry, { cause }: StopTimes, place: string, key: string): boolean {
  if (entry.name === key) return true
  const alike = plain(entry.name) === plain(cause) || plain(entry.title) === plain(cause)
  return alike && (entry.sources.length > 1 || place.startsWith('every ') || standsAt(entry, place))
}

const standsAt = ({ sources }: StopEntry, place: string): boolean =>
  sources.some((source) => source.place === place || place === `transfer ${source.place}`)

/** What people call a stop stays. */
const titled = (value: string, { name, title }: StopEntry): string =>
  title === name ? value : value.replace('{ ', `{ title: ${JSON.stringify(title)}, `)

function freeKey(name: string, taken: ReadonlySet<string>): string {
  for (let count = 1; ; count++) {
    const key = count === 1 ? name : `${name} ${count}`
    if (!taken.has(key)) return key
  }
}

/** What a stop log leaves open, as its own study tells it at length. */
function logNotes({ endsGuessed, outside, overlaps }: StopStudy): string[] {
  const lines = (all: readonly (number | string)[]): string => listWords(all.map(String), NAMED_MAX)
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
