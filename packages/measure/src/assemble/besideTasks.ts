/** Times that are of no task: of supplies, receivers, releases, walks, ways by hand and transfers, by the words that a table calls them. */
import type { Scenario } from '@loopwright/scenario'
import { plainWord as plain } from '../table/heads.ts'
import { corners, type HandWay, handWays } from './handWays.ts'

/** A place of a scenario that takes a time, and is no task. */
export interface TimePlace {
  /** as a table would call it: "supply", "receiver S4", "walk S1 S3" */
  readonly name: string
  readonly path: string
  /** it takes one time and no distribution: the mean goes there */
  readonly constant: boolean
}

interface Worded extends TimePlace {
  readonly words: readonly string[]
}

/** A step of a path; a name that is no plain word stands in quotes. */
export const step = (name: string): string => (/^[\w ]+$/.test(name) ? name : `"${name}"`)

/** The places of a scenario beside its tasks. @param text  of the scenario: ways by hand and corners stand in it as they are listed */
export function timePlaces({ line }: Pick<Scenario, 'line'>, text: string): TimePlace[] {
  return worded(line, text).map(({ name, path, constant }) => ({ name, path, constant }))
}

/** The place that a table calls so: without blanks, signs and capitals; null: there is none. */
export function timePlaceOf({ line }: Pick<Scenario, 'line'>, text: string, name: string): TimePlace | null {
  const found = worded(line, text).find(({ words }) => words.some((word) => plain(word) === plain(name)))
  return found === undefined ? null : { name: found.name, path: found.path, constant: found.constant }
}

function worded({ stations, supply, walks }: Scenario['line'], text: string): Worded[] {
  /** what people call a station */
  const called = (index: number): string[] => [...new Set([stations[index]!.name, stations[index]!.title])]
  const own = (word: string, index: number): string[] => called(index).map((name) => `${word} ${name}`)
  const intervals = (path: string, words: readonly string[]): Worded => ({ name: words[0]!, words, path: `${path}.every`, constant: false })
  return [
    ...(supply.arrivals.kind === 'every'
      ? [intervals('supply', ['supply', 'arrival', 'arrivals', 'supply interval', 'time between arrivals', 'interarrival time'])]
      : []),
    ...stations.flatMap(({ name, supply: its, receiver, load, unload, work }, index): Worded[] => {
      const path = `stations.${step(name)}`
      return [
        ...(its?.arrivals.kind === 'every' ? [intervals(`${path}.supply`, [...own('supply', index), ...own('arrivals', index)])] : []),
        ...(receiver === null
          ? []
          : [{ name: `receiver ${name}`, words: own('receiver', index), path: `${path}.receiver.cycle`, constant: false }]),
        ...(load === null && unload === null && work === null
          ? []
          : [{ name: `release ${name}`, words: own('release', index), path: `${path}.release`, constant: false }]),
      ]
    }),
    ...walks.map(({ between: [a, b] }, index): Worded => {
      const words = called(a).flatMap((one) =>
        called(b).flatMap((other) => [
          `walk ${one} ${other}`,
          `walk ${other} ${one}`,
          `walk from ${one} to ${other}`,
          `walk from ${other} to ${one}`,
        ]),
      )
      return { name: words[0]!, words, path: `walks[${index}].lasts`, constant: true }
    }),
    ...wordedWays(stations, handWays(text)),
    ...corners(text).map(
      (key): Worded => ({ name: key, words: [key, `corner ${key}`, `transfer ${key}`], path: `corners.${key}`, constant: true }),
    ),
  ]
}

/** A way is called by its station where that has one of its kind, and always by its ends. */
function wordedWays(stations: Scenario['line']['stations'], ways: readonly HandWay[]): Worded[] {
  return ways.map(({ kind, station, from, to, path }) => {
    const only = ways.filter((other) => other.kind === kind && other.station === station).length === 1
    const title = stations.find(({ name }) => name === station)?.title ?? station
    const ends = to === '' ? `${kind} ${from}` : `${kind} ${from} ${to}`
    const words = [...(only ? [...new Set([`${kind} ${station}`, `${kind} ${title}`])] : []), ends]
    return { name: words[0]!, words, path, constant: false }
  })
}
