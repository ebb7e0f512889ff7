/** What the recursion keeps beside the columns of the line: instants instead of timers. */
import type { Line } from '../state.ts'
import { NONE } from '../state.ts'

/** Phases of a carrier here: at rest and done from `readyAt` on, or looking at `lookAt` and else at rest at `readyAt`. */
export const READY = 0
export const LOOKS = 1

export interface Sweep {
  readonly line: Line
  warmup: number
  last: number
  /** carriers from the front one backwards, round the loop */
  readonly order: Int32Array

  // By carrier
  readonly mode: Uint8Array
  readonly lookAt: Float64Array
  readonly readyAt: Float64Array
  /** instant up to which its time has been told */
  readonly carrierTold: Float64Array

  // By zone
  /** instant at which the zone turned or turns free, after the last carrier that left it */
  readonly freeAt: Float64Array
  /** instant up to which a stop of its transfer holds it */
  readonly heldUntil: Float64Array
  /** carrier that the zone is set aside for; NONE */
  readonly asideFor: Int32Array
  readonly occupiedSince: Float64Array
  readonly zoneTold: Float64Array

  // By station
  readonly downFrom: Float64Array
  readonly downUntil: Float64Array
  readonly stationTold: Float64Array
  /** end of the last time told as blocked; NaN before the first */
  readonly blockedTo: Float64Array
  /** first break that is not over: for work, and for telling */
  readonly nextBreak: Int32Array
  readonly nextBreakTold: Int32Array

  /** breaks joined where they touch or overlap */
  readonly breakStart: Float64Array
  readonly breakEnd: Float64Array

  /** holds of the zone just left, while the carrier is under way: begins and ends */
  holds: number
  holdFrom: Float64Array
  holdTo: Float64Array
}

export function makeSweep(line: Line): Sweep {
  const { carriers, zones, stations } = line
  const joined = joinBreaks(line)
  return {
    line,
    warmup: 0,
    last: 0,
    order: new Int32Array(carriers),
    mode: new Uint8Array(carriers),
    lookAt: new Float64Array(carriers),
    readyAt: new Float64Array(carriers),
    carrierTold: new Float64Array(carriers),
    freeAt: new Float64Array(zones),
    heldUntil: new Float64Array(zones),
    asideFor: new Int32Array(zones),
    occupiedSince: new Float64Array(zones),
    zoneTold: new Float64Array(zones),
    downFrom: new Float64Array(stations),
    downUntil: new Float64Array(stations),
    stationTold: new Float64Array(stations),
    blockedTo: new Float64Array(stations),
    nextBreak: new Int32Array(stations),
    nextBreakTold: new Int32Array(stations),
    breakStart: Float64Array.from(joined, ([start]) => start),
    breakEnd: Float64Array.from(joined, ([, end]) => end),
    holds: 0,
    holdFrom: new Float64Array(8),
    holdTo: new Float64Array(8),
  }
}

/** Sets the sweep to time 0; the line has been reset before. */
export function resetSweep(sweep: Sweep, warmup: number, last: number): void {
  const { line, order } = sweep
  sweep.warmup = warmup
  sweep.last = last
  for (const column of [sweep.lookAt, sweep.readyAt, sweep.carrierTold, sweep.freeAt, sweep.heldUntil, sweep.occupiedSince]) column.fill(0)
  for (const column of [sweep.zoneTold, sweep.downFrom, sweep.downUntil, sweep.stationTold]) column.fill(0)
  sweep.blockedTo.fill(Number.NaN)
  sweep.mode.fill(READY)
  sweep.asideFor.fill(NONE)
  sweep.nextBreak.fill(0)
  sweep.nextBreakTold.fill(0)
  let k = 0
  for (let zone = line.zones - 1; zone >= 0; zone--) if (line.zoneCarrier[zone] !== NONE) order[k++] = line.zoneCarrier[zone]!
}

function joinBreaks(line: Line): [number, number][] {
  const joined: [number, number][] = []
  let open = 0
  line.breakTimes.forEach((time, k) => {
    const step = line.breakSteps[k]!
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
