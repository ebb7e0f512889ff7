/** Why a run stood still, in terms of the line: the circle of zones that wait for each other, who waits behind it, and the plain reason. */
import { completeLine, type GivenLine, type LineSpec, type RunEnd, STORE } from '@loopwright/line'

/** Why nothing can move. */
export type StandstillReason =
  /** every place to stand of the circle is taken */
  | 'too many carriers'
  /** the circle runs through a zone with several ways in: what came in there keeps itself from going on */
  | 'merge fills its own exit'
  /** work needs more operators than cover it: those who are there wait for themselves */
  | 'operator waits for himself'
  /** the operators whom work, a push or a pull waits for are bound to stations that wait for others */
  | 'operators wait for each other'
  /** zones wait, but not in a circle: the first of them has no way on */
  | 'no way on'

/** Who waits for whom where nothing can move. */
export interface Standstill {
  /** where zones wait in a circle, that of the circle; operators who are not free keep further zones waiting then */
  readonly reason: StandstillReason
  /** zone indices, each waits for the next and the last for the first; empty where there is no circle */
  readonly circle: readonly number[]
  /** zone indices that wait for the circle, or for another zone, without being part of it; rising */
  readonly behind: readonly number[]
  /** index of the merging zone; null: none is part of the reason */
  readonly merge: number | null
  /** zone indices that wait for operators */
  readonly unmanned: readonly number[]
  /** of these, zones whose station needs more operators than cover it */
  readonly understaffed: readonly number[]
}

/**
 * Reads the reason off the end of a run. (MODEL.md §10)
 *
 * @param end  of a run of this line that ended in gridlock
 * @returns null where the run did not end so
 * @example standstillOf(line, (await replicate(line, { replications: 1 }, { seed: '1', workers: 0 }))[0].end) // => null
 */
export function standstillOf(given: GivenLine, end: RunEnd): Standstill | null {
  const line = completeLine(given)
  if (end.reason !== 'gridlock') return null
  const { cycle: circle, unmanned } = end
  const merge = circle.length === 0 || isFull(line, end) || holdsAll(line, circle) ? null : mergeOf(line, end)
  const understaffed = unmanned.filter((zone) => isUnderstaffed(line, zone))
  return {
    reason: reasonOf(circle, merge, unmanned, understaffed),
    circle,
    behind: end.waits.map(([zone]) => zone).filter((zone) => !circle.includes(zone)),
    merge,
    unmanned,
    understaffed,
  }
}

function reasonOf(
  circle: readonly number[],
  merge: number | null,
  unmanned: readonly number[],
  understaffed: readonly number[],
): StandstillReason {
  if (circle.length > 0) return merge === null ? 'too many carriers' : 'merge fills its own exit'
  if (unmanned.length === 0) return 'no way on'
  return understaffed.length > 0 ? 'operator waits for himself' : 'operators wait for each other'
}

/** The zone of the circle with several ways in: the first that somebody outside waits for, else the first. */
function mergeOf({ paths }: LineSpec, { cycle, waits }: RunEnd): number | null {
  const merges = cycle.filter((zone) => paths.filter(({ to }) => to === zone).length > 1)
  const waited = new Set(waits.filter(([zone]) => !cycle.includes(zone)).map(([, ahead]) => ahead))
  return merges.find((zone) => waited.has(zone)) ?? merges[0] ?? null
}

/** Whether every carrier that there is stands in the circle: with one fewer it would have room, whatever comes in where. */
function holdsAll({ paths, carriers }: LineSpec, circle: readonly number[]): boolean {
  return circle.length === carriers.count && paths.every(({ from, to }) => from !== STORE && to !== STORE)
}

/** Whether all places that one comes to from the circle and back are taken, and nothing came to them from elsewhere. */
function isFull({ paths, zones }: LineSpec, { cycle, waits, unmanned }: RunEnd): boolean {
  const on = reached(cycle[0]!, (place) => paths.filter(({ from }) => from === place).map(({ to }) => to))
  const back = reached(cycle[0]!, (place) => paths.filter(({ to }) => to === place).map(({ from }) => from))
  const part = new Set([...on].filter((place) => back.has(place)))
  const taken = new Set([...waits.map(([zone]) => zone), ...unmanned])
  const isTaken = (place: number): boolean => taken.has(place) || zones[place]?.transfer?.enterOnlyIfExitClear === true
  return [...part].every(isTaken) && paths.every(({ from, to }) => !part.has(to) || part.has(from))
}

function reached(start: number, next: (place: number) => readonly number[]): Set<number> {
  const found = new Set([start])
  for (const place of found) for (const other of next(place)) found.add(other)
  return found
}

/** Only named operators can be too few: a station of its own has as many as it needs. */
function isUnderstaffed({ stations, operators }: LineSpec, zone: number): boolean {
  const index = stations.findIndex((station) => station.zone === zone)
  const covering = operators.filter((operator) => operator.stations.includes(index)).length
  return index >= 0 && covering > 0 && stations[index]!.operatorsNeeded > covering
}
