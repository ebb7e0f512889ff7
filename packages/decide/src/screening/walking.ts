/** How far people walk in a shift: ways that were measured a unit, times the units that were simulated. */
import { completeLine, type GivenLine, type LineSpec, type StationSpec, tasksOf } from '@loopwright/line'
import { mixShares } from '@loopwright/line/bounds'
import { compareWith, type ScreeningFinding } from './finding.ts'
import type { MeasuredWalk, ScreeningInputs } from './inputs.ts'
import { ownLimit } from './ownLimit.ts'

/** One kind of way of one person, mean of a shift. */
export interface WalkPart {
  /** a task, a station, or what else people walk for */
  readonly of: string
  /** metres each time */
  readonly metresEach: number
  /** a shift */
  readonly times: number
  /** how both are known */
  readonly known: string
}

/** What one person walks in a shift. */
export interface Walked {
  /** named operator, or name of the station whose own operator it is */
  readonly person: string
  readonly parts: readonly WalkPart[]
}

/** Metres of all parts. @example metresOf({ person: 'Ann', parts: [{ of: 'wire', metresEach: 4, times: 300, known: 'tape' }] }) // => 1200 */
export const metresOf = ({ parts }: Walked): number => parts.reduce((sum, { metresEach, times }) => sum + metresEach * times, 0)

/**
 * Measured ways that belong to a line: those whose task or station it has.
 *
 * @example walksOn(line, [{ of: 'nobody', metres: 4, measured: 'tape' }]) // => []
 */
export function walksOn(given: GivenLine, walks: readonly MeasuredWalk[]): MeasuredWalk[] {
  const line = completeLine(given)
  return walks.filter(({ of }) => placesOf(line, of).length > 0)
}

/**
 * Metres of each person at tasks and stations, by the carriers that each station lets go in a shift.
 *
 * A task counts for the variants that have it, in the shares of the mix; a way of a station that several may work at is shared alike among them.
 *
 * @param cycles  carriers that each station lets go, mean of a shift, by station
 * @returns       one entry per person with a measured way, operators and stations in the order of the ways
 * @example measuredWalks(line, [{ of: line.stations[0].name, metres: 4, measured: 'tape' }], line.stations.map(() => 300)).map(metresOf) // => [1200]
 */
export function measuredWalks(given: GivenLine, walks: readonly MeasuredWalk[], cycles: readonly number[]): Walked[] {
  const line = completeLine(given)
  const parts = new Map<string, WalkPart[]>()
  for (const { of, metres, measured } of walks)
    for (const { station, share } of placesOf(line, of)) {
      const { name, operatorsNeeded } = line.stations[station]!
      const named = line.operators.filter(({ stations }) => stations.includes(station))
      const alike = named.length === 0 ? 1 : Math.min(1, Math.max(1, operatorsNeeded) / named.length)
      const known = [
        measured,
        ...(share < 1 ? [`on ${Math.round(100 * share)} % of the units, by the mix`] : []),
        ...(line.rework.some(({ task, only }) => only && line.tasks[task] === of) ? ['at most: it is done for rejected units alone'] : []),
        ...(operatorsNeeded === 0 ? ['an automatic station: who walks there is not said'] : []),
        ...(alike < 1 ? [`shared alike among ${named.length}`] : []),
        ...(named.length === 0 && operatorsNeeded > 1 ? [`walked by each of ${operatorsNeeded}`] : []),
      ].join('; ')
      for (const person of named.length === 0 ? [name] : named.map((operator) => operator.name))
        parts.set(person, [...(parts.get(person) ?? []), { of, metresEach: metres, times: cycles[station]! * share * alike, known }])
    }
  return [...parts].map(([person, its]) => ({ person, parts: its }))
}

/** Stations where a task is done, or the station of that name, and on which share of what the station lets go. */
function placesOf({ tasks, stations, mix, variants }: LineSpec, name: string): { readonly station: number; readonly share: number }[] {
  const shares = mixShares(mix, variants.length)
  const task = tasks.indexOf(name)
  return stations.flatMap((station, index) => {
    if (station.name === name) return [{ station: index, share: 1 }]
    const here = tasksOf(station).find((one) => one.task === task)
    if (here === undefined) return []
    const all = sum(shares.filter((_, variant) => hasDuty(station, variant)))
    return all === 0 ? [] : [{ station: index, share: sum(shares.filter((_, variant) => here.seconds[variant] !== null)) / all }]
  })
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

/** What a station lets go after a duty: all where it loads, else what has a task there. */
const hasDuty = (station: StationSpec, variant: number): boolean =>
  station.load !== null || station.unload?.length === 0 || tasksOf(station).some(({ seconds }) => seconds[variant] !== null)

/** Metres a shift of the person who walks most: the others walk less. Told, and judged only by a limit that the user has read. */
export function walkFindings(
  walked: readonly Walked[],
  inputs: Pick<ScreeningInputs, 'ownCopy' | 'secondHand' | 'fromMemory'>,
): ScreeningFinding[] {
  const [most] = walked.toSorted((one, other) => metresOf(other) - metresOf(one))
  if (most === undefined) return []
  return [
    compareWith(
      {
        id: 'walk',
        topic: 'Walking',
        what: `longest way walked in a shift: ${most.person}`,
        value: metresOf(most),
        unit: 'm',
        ...ownLimit(inputs, 'walk', 'the rule that your plant goes by', 'at most'),
        assumptions: most.parts.map(
          ({ of, metresEach, times, known }) => `${of}: ${Number(metresEach.toPrecision(3))} m × ${Math.round(times)} (${known})`,
        ),
        measure: 'the way of one person through a whole shift, with a step counter or on foot beside: fetching, returning and errands too',
      },
      inputs,
    ),
  ]
}
