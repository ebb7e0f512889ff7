/** What the recursion keeps beside the columns of the line: instants instead of timers. */
import { PACE_CLEAR } from '../moves/motion.ts'
import type { Line } from '../state/line.ts'
import { USES_UNIFORM } from '../state/draws.ts'
import { NONE } from '../state/lists.ts'

/** Phases of a carrier here: at rest and done from `readyAt` on, or looking at `lookAt` and else at rest at `readyAt`. */
export const MODE_RESTS = 0
export const MODE_LOOKS = 1

/** Derived times, no change behind it, no exit-clear transfer at either end, and nothing can hold it. */
export const PLAIN_MOVE = 1
/** There is a station at its end. */
export const STATION_AHEAD = 2
/** There is one in the zone that it leaves, or at its end, whose time is told piece by piece. */
export const TELLS_HERE = 4
export const TELLS_AHEAD = 8
/** The transfer at its end changes its position. */
export const CHANGES_AHEAD = 16
/** From this bit on: where its pace begins (distinctPaces in moves/motion.ts). */
export const PACE_BIT = 5

export interface Recursion {
  readonly line: Line
  warmup: number
  last: number
  /** carriers from the front one backwards, round the loop */
  readonly order: Int32Array
  /** place in `order` of the carrier to be taken next, and carriers in a row that could not be taken any further */
  turn: number
  idle: number

  // By carrier
  readonly mode: Uint8Array
  readonly lookAt: Float64Array
  readonly readyAt: Float64Array
  /** move start into the zone where it is, at least the end of the warm-up */
  readonly enteredAt: Float64Array

  // By zone
  /** instant at which the zone turned or turns free, after the last carrier that left it; infinite while a carrier is in it that is not being taken */
  readonly freeAt: Float64Array
  /** instant up to which a stop of its transfer holds it */
  readonly heldUntil: Float64Array
  /** carrier that the zone is set aside for; NONE */
  readonly asideFor: Int32Array
  /** since when it is set aside, at least the end of the warm-up, and seconds set aside in the window so far */
  readonly asideSince: Float64Array
  readonly asideSeconds: Float64Array
  /** seconds in the window for which a stop of its transfer held it with its carrier at rest in it */
  readonly heldSeconds: Float64Array
  /** what is known of the move out: PLAIN_MOVE and so on, added up */
  readonly moveFlags: Int32Array
  /** plain moves begun in the window, `2·zone + start`: what they take is known, so that they are only counted */
  readonly plainMoves: Int32Array

  // By station
  /** 1: stops, breaks, or exchanges in no time, so that its time is told piece by piece; 0: it follows from its zone's (run.ts) */
  readonly hasOwnSeconds: Uint8Array
  /** the only duty of a station that has one, of one task whose time is known ahead for every variant, no release and no transfer; and that task. NONE: its stays are worked out in full */
  readonly onlyDuty: Int32Array
  readonly onlyTask: Int32Array
  readonly downFrom: Float64Array
  readonly downUntil: Float64Array
  /** instant up to which its time has been told, within the window */
  readonly stationUntil: Float64Array
  /** no stop and no break covers the time from `calmFrom` to `calmUntil` that is still to be told, and it lies in the window */
  readonly calmFrom: Float64Array
  readonly calmUntil: Float64Array
  /** up to this instant, work that starts now meets no break */
  readonly pauseAt: Float64Array
  /** end of the last time told as blocked; NaN before the first */
  readonly blockedTo: Float64Array
  /** first break that is not over: for work, and for telling */
  readonly nextBreak: Int32Array
  readonly nextBreakAdded: Int32Array

  /** breaks joined where they touch or overlap */
  readonly breakStart: Float64Array
  readonly breakEnd: Float64Array

  /** an instant handed over a call, in and out: a number in a place of its own is never boxed; length 1 */
  readonly at: Float64Array
  /** a duration handed over a call; length 1 */
  readonly seconds: Float64Array

  /** holds of the zone just left, while the carrier is under way: begins and ends */
  holds: number
  holdFrom: Float64Array
  holdTo: Float64Array
}

export function makeRecursion(line: Line): Recursion {
  const { carriers, zones, stations } = line
  const joined = joinBreaks(line)
  const hasOwnSeconds = Uint8Array.from({ length: stations }, (_, station) => (followsZone(line, station) ? 0 : 1))
  return {
    line,
    warmup: Number.NaN,
    last: Number.NaN,
    order: new Int32Array(carriers),
    turn: 0,
    idle: 0,
    mode: new Uint8Array(carriers),
    lookAt: new Float64Array(carriers),
    readyAt: new Float64Array(carriers),
    enteredAt: new Float64Array(carriers),
    freeAt: new Float64Array(zones),
    heldUntil: new Float64Array(zones),
    asideFor: new Int32Array(zones),
    asideSince: new Float64Array(zones),
    asideSeconds: new Float64Array(zones),
    heldSeconds: new Float64Array(zones),
    moveFlags: Int32Array.from({ length: zones }, (_, zone) => moveFlags(line, hasOwnSeconds, zone)),
    plainMoves: new Int32Array(2 * zones),
    hasOwnSeconds,
    ...onlyDuties(line),
    downFrom: new Float64Array(stations),
    downUntil: new Float64Array(stations),
    stationUntil: new Float64Array(stations),
    calmFrom: new Float64Array(stations),
    calmUntil: new Float64Array(stations),
    pauseAt: new Float64Array(stations),
    blockedTo: new Float64Array(stations),
    nextBreak: new Int32Array(stations),
    nextBreakAdded: new Int32Array(stations),
    breakStart: Float64Array.from(joined, ([start]) => start),
    breakEnd: Float64Array.from(joined, ([, end]) => end),
    at: new Float64Array(1),
    seconds: new Float64Array(1),
    holds: 0,
    holdFrom: new Float64Array(8),
    holdTo: new Float64Array(8),
  }
}

/** Sets the recursion to time 0; the line has been reset before. */
export function resetRecursion(recursion: Recursion, warmup: number, last: number): void {
  const { line, order } = recursion
  recursion.warmup = warmup
  recursion.last = last
  recursion.turn = 0
  recursion.idle = 0
  for (const column of [
    recursion.lookAt,
    recursion.readyAt,
    recursion.freeAt,
    recursion.heldUntil,
    recursion.downFrom,
    recursion.downUntil,
  ])
    column.fill(0)
  for (const column of [recursion.asideSeconds, recursion.heldSeconds, recursion.plainMoves]) column.fill(0)
  for (const column of [recursion.enteredAt, recursion.stationUntil, recursion.calmFrom]) column.fill(warmup)
  for (let station = 0; station < line.stations; station++) {
    const pause =
      line.stops.stationBreaks[station] === 1 && recursion.breakStart.length > 0 ? recursion.breakStart[0]! : Number.POSITIVE_INFINITY
    recursion.pauseAt[station] = pause
    recursion.calmUntil[station] = Math.min(pause, last)
  }
  recursion.blockedTo.fill(Number.NaN)
  recursion.mode.fill(MODE_RESTS)
  recursion.asideFor.fill(NONE)
  recursion.nextBreak.fill(0)
  recursion.nextBreakAdded.fill(0)
  let k = 0
  for (let zone = line.zones - 1; zone >= 0; zone--) {
    if (line.moves.zoneCarrier[zone] === NONE) continue
    order[k++] = line.moves.zoneCarrier[zone]!
    recursion.freeAt[zone] = Number.POSITIVE_INFINITY
  }
}

function moveFlags(line: Line, hasOwnSeconds: Uint8Array, zone: number): number {
  const next = line.graph.zoneNext[zone]!
  const here = line.work.zoneStation[zone]!
  const ahead = line.work.zoneStation[next]!
  return (
    (isPlainMove(line, zone) ? PLAIN_MOVE : 0) +
    (ahead === NONE ? 0 : STATION_AHEAD) +
    (here !== NONE && hasOwnSeconds[here] === 1 ? TELLS_HERE : 0) +
    (ahead !== NONE && hasOwnSeconds[ahead] === 1 ? TELLS_AHEAD : 0) +
    (line.transfers.zoneChanges[next] === 1 ? CHANGES_AHEAD : 0) +
    (line.moves.pathPace[zone]! << PACE_BIT)
  )
}

function isPlainMove(line: Line, zone: number): boolean {
  const { exitClear } = line.graph
  const { zoneChanges } = line.transfers
  const { moveSampler, clearSampler } = line.moves
  const { transferClocks } = line.stops
  const next = line.graph.zoneNext[zone]!
  const hasClocks = (at: number): boolean => transferClocks.first[at] !== transferClocks.first[at + 1]
  if (moveSampler[zone] !== NONE || clearSampler[zone] !== NONE || hasClocks(zone) || hasClocks(next)) return false
  return zoneChanges[zone] === 0 && exitClear[zone] === 0 && exitClear[next] === 0
}

/** No stop, no break, and no block that begins as another ends. */
function followsZone(line: Line, station: number): boolean {
  const { stationClocks, stationBreaks, breakTimes } = line.stops
  const { moveSampler, pathPace, paceSeconds } = line.moves
  if (stationClocks.first[station] !== stationClocks.first[station + 1]) return false
  if (stationBreaks[station] === 1 && breakTimes.length > 0) return false
  const before = line.graph.zonePrevious[line.work.stationZone[station]!]!
  return (
    moveSampler[before] === NONE && paceSeconds.subarray(pathPace[before]!, pathPace[before]! + PACE_CLEAR).every((seconds) => seconds > 0)
  )
}

function onlyDuties(line: Line): Pick<Recursion, 'onlyDuty' | 'onlyTask'> {
  const onlyDuty = new Int32Array(line.stations).fill(NONE)
  const onlyTask = new Int32Array(line.stations).fill(NONE)
  for (let station = 0; station < line.stations; station++) {
    const duties = [0, 1, 2].filter((duty) => line.work.hasDuty[3 * station + duty] === 1)
    const first = line.work.dutyFirst[3 * station]!
    const task = line.work.entryTask[first]!
    const entries = line.work.dutyFirst[3 * station + 3]! - first
    if (duties.length !== 1 || entries !== 1 || line.work.releaseSampler[station] !== NONE || !followsZone(line, station)) continue
    if (line.transfers.zoneChanges[line.work.stationZone[station]!] === 1) continue
    const samplers = line.work.entrySampler.subarray(first * line.variants, (first + 1) * line.variants)
    if (line.draws.taskAhead[task]! < 0 || samplers.some((sampler) => sampler === NONE || line.draws.samplerUses[sampler] !== USES_UNIFORM))
      continue
    onlyDuty[station] = duties[0]!
    onlyTask[station] = task
  }
  return { onlyDuty, onlyTask }
}

function joinBreaks(line: Line): [number, number][] {
  const joined: [number, number][] = []
  let open = 0
  line.stops.breakTimes.forEach((time, k) => {
    const step = line.stops.breakSteps[k]!
    if (step === 1 && open === 0) {
      const before = joined.at(-1)
      if (before !== undefined && before[1] === time) joined.pop()
      joined.push([before !== undefined && before[1] === time ? before[0] : time, time])
    }
    open += step
    joined.at(-1)![1] = time
  })
  return joined
}
