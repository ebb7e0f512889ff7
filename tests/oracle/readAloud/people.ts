/** Operators: where they stand, who calls them, who goes. (MODEL.md §6, §5 "Manual paths") */
import type { LineSpec } from '@loopwright/line'
import { onGrid } from './grid.ts'
import { breakIsOn, stationIsHeld } from './held.ts'
import { claim, manualWayThatCouldStart } from './moves.ts'
import { isReady } from './readiness.ts'
import type { Operator, World } from './world.ts'

/** Named ones; then those of stations that nobody named covers and that have a push or pull: "as many as it needs, at least one". */
export function operatorsAtStart(spec: LineSpec): Operator[] {
  const free = { task: null, walkLeft: null }
  const named = spec.operators.map(({ stations, start }): Operator => ({ covers: stations, ownOf: null, place: start, ...free }))
  const own = spec.stations.flatMap(({ operatorsNeeded }, station): Operator[] => {
    const isCovered = spec.operators.some(({ stations }) => stations.includes(station))
    if (isCovered || !spec.paths.some(({ manual }) => manual?.station === station)) return []
    return Array.from({ length: Math.max(1, operatorsNeeded) }, () => ({ covers: [station], ownOf: station, place: station, ...free }))
  })
  return [...named, ...own]
}

/** whether operators must come to the station; else its own are there at once, or it needs none */
export function mustBeCalled(w: World, station: number): boolean {
  return w.spec.stations[station]!.operatorsNeeded > 0 && w.operators.some(({ covers }) => covers.includes(station))
}

function sentTo(w: World, station: number): Operator[] {
  return w.operators.filter(({ task }) => task?.kind === 'station' && task.station === station)
}

/** all that the station needs are there */
export function operatorsAreThere(w: World, station: number): boolean {
  if (!mustBeCalled(w, station)) return true
  return sentTo(w, station).filter(({ walkLeft }) => walkLeft === null).length === w.spec.stations[station]!.operatorsNeeded
}

/** "A station calls when all else for its first duty is there, and waits from that instant" */
export function noteCalls(w: World): void {
  w.spec.stations.forEach((_, station) => {
    if (w.calledSince[station] === null && mustBeCalled(w, station) && isReady(w, station)) w.calledSince[station] = w.t
  })
}

/** "They stay from the first duty to the end of the release …; then they stay where they are until they are called." */
export function letGo(w: World, station: number): void {
  w.calledSince[station] = null
  for (const operator of sentTo(w, station)) setFree(w, operator)
}

export function setFree(w: World, operator: Operator): void {
  const { place } = operator
  operator.task = null
  w.log.push({ t: w.t, what: 'operator free', station: place, operator: w.operators.indexOf(operator) })
}

/** the operator that has come, or comes, to push or pull this carrier on this path */
export function pusherOf(w: World, carrier: number): Operator | null {
  return w.operators.find(({ task }) => task?.kind === 'path' && task.carrier === carrier) ?? null
}

interface Call {
  readonly since: number
  readonly station: number
  /** null: the call of the station itself */
  readonly manual: { readonly carrier: number; readonly path: number } | null
}

/** All that still lack somebody: "the station that has called longest ago and still lacks one (then the lower station index)", pushes and pulls "by the time its carrier has waited (then stations first)". */
export function calls(w: World, asIfNoStops: boolean): Call[] {
  const all: Call[] = []
  if (breakIsOn(w) && !asIfNoStops) return all // "and nobody is sent"
  w.spec.stations.forEach(({ operatorsNeeded }, station) => {
    const since = w.calledSince[station]!
    if (since === null || sentTo(w, station).length >= operatorsNeeded) return
    if (asIfNoStops || !stationIsHeld(w, station)) all.push({ since, station, manual: null })
  })
  w.carriers.forEach((one, carrier) => {
    const path = manualWayThatCouldStart(w, carrier, asIfNoStops)
    if (path !== null) all.push({ since: one.waitsSince!, station: w.spec.paths[path]!.manual!.station, manual: { carrier, path } })
  })
  const rank = ({ since, manual, station }: Call): number[] => [since, manual === null ? 0 : 1, manual === null ? station : manual.path]
  return all.sort((a, b) => {
    const [left, right] = [rank(a), rank(b)]
    return left[0]! - right[0]! || left[1]! - right[1]! || left[2]! - right[2]!
  })
}

function walkSeconds(w: World, from: number, to: number): number {
  if (from === to) return 0
  const walk = w.spec.walks.find(({ between }) => between.includes(from) && between.includes(to))
  return walk === undefined ? 0 : onGrid(walk.seconds)
}

/** the free operator who would go: "the nearest (least walkSeconds, then lower operator index)" */
function nearestFree(w: World, station: number): Operator | null {
  let best: Operator | null = null
  for (const operator of w.operators) {
    if (operator.task !== null || !operator.covers.includes(station)) continue
    if (best === null || walkSeconds(w, operator.place, station) < walkSeconds(w, best.place, station)) best = operator
  }
  return best
}

/** Sends one operator; false: nobody can be sent. */
export function sendOne(w: World): boolean {
  for (const { station, manual } of calls(w, false)) {
    const operator = nearestFree(w, station)
    if (operator === null) continue
    operator.walkLeft = walkSeconds(w, operator.place, station)
    operator.task = manual === null ? { kind: 'station', station } : { kind: 'path', ...manual }
    w.log.push({ t: w.t, what: 'operator sent', station, operator: w.operators.indexOf(operator) })
    if (manual !== null) claim(w, manual.carrier, manual.path) // "When the operator sets off, the next zone becomes `claimed`"
    return true
  }
  return false
}

export function couldSend(w: World): boolean {
  return calls(w, true).some(({ station }) => nearestFree(w, station) !== null)
}

/** Ends one walk; false: none ends now. */
export function endOneWalk(w: World): boolean {
  const operator = w.operators.find(({ walkLeft }) => walkLeft === 0)
  if (operator === undefined) return false
  const { task } = operator
  operator.walkLeft = null
  operator.place = task!.kind === 'station' ? task!.station : w.spec.paths[task!.path]!.manual!.station
  w.log.push({ t: w.t, what: 'operator there', station: operator.place, operator: w.operators.indexOf(operator) })
  return true
}
