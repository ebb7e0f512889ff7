/** How long a move and its clearing take. (MODEL.md §3) */
import { type LineSpec, STORE } from '@loopwright/line'
import type { Draws } from './draws.ts'
import { onGrid } from './grid.ts'

export type Gait = 'rest' | 'speed'

/** x = v²/(2a), ramp = v/(2a); no acceleration: both 0 */
function ramps(v: number, a: number | null): { x: number; ramp: number } {
  return a === null ? { x: 0, ramp: 0 } : { x: (v * v) / (2 * a), ramp: v / (2 * a) }
}

/** M(start, end), derived from the drive */
function derivedMoveSeconds(d: number, v: number, a: number | null, start: Gait, end: Gait): number {
  const { x, ramp } = ramps(v, a)
  if (start === 'speed' && end === 'speed') return onGrid(d / v)
  if (start === 'rest' && end === 'rest') return onGrid(d >= 2 * x ? d / v + 2 * ramp : 2 * Math.sqrt(d / a!))
  return onGrid(d >= x ? d / v + ramp : Math.sqrt((2 * d) / a!))
}

/** C(start) of single release, derived from the drive; e = ℓ − o */
function derivedClearSeconds(e: number, v: number, a: number | null, reaction: number, start: Gait): number {
  const { x, ramp } = ramps(v, a)
  if (start === 'speed') return onGrid(e / v + reaction)
  return onGrid(e >= x ? e / v + ramp + reaction : Math.sqrt((2 * e) / a!) + reaction)
}

export interface MoveTimes {
  /** from the start until the carrier is at rest in the next zone */
  readonly toRest: number
  /** from the start until the carrier can look whether it may go on at speed; null: a given move ends at rest */
  readonly toLook: number | null
  /** null: out of the store, which is never left */
  readonly toClear: number | null
}

/** The times of one move on a path. Takes the draws of the move and of the clearing. */
export function moveTimes(spec: LineSpec, draws: Draws, pathIndex: number, start: Gait): MoveTimes {
  const path = spec.paths[pathIndex]!
  const zone = path.from === STORE ? null : spec.zones[path.from]!
  let toRest: number
  let toLook: number | null
  if (path.moveSeconds !== null) {
    // "A move with a given moveSeconds takes that time from rest or at speed, ends at rest with no ramp of its own"
    toRest = draws.inOrder(`move/${zone?.name ?? 'store'}`, path.moveSeconds)
    toLook = null
  } else {
    const d = path.distanceMetres!
    const v = path.speedMetresPerSecond!
    const a = path.accelerationMetresPerSecondSquared
    toRest = derivedMoveSeconds(d, v, a, start, 'rest')
    toLook = derivedMoveSeconds(d, v, a, start, 'speed')
  }
  let toClear: number | null
  if (zone === null) {
    toClear = null
  } else if (path.clearSeconds === 'move') {
    toClear = toRest
  } else if (path.clearSeconds !== null) {
    toClear = draws.inOrder(`clear/${zone.name}`, path.clearSeconds)
  } else if (zone.release === 'train' && zone.transfer === null) {
    // "Train release: C = δ from either start. A zone with a transfer is always left by single release."
    toClear = onGrid(spec.staggerSeconds)
  } else {
    const length = (path.across ? spec.carriers.widthMetres : spec.carriers.lengthMetres)!
    const e = length - zone.sensorBeforeStopMetres
    toClear = derivedClearSeconds(e, path.speedMetresPerSecond!, path.accelerationMetresPerSecondSquared, spec.reactionSeconds, start)
  }
  return { toRest, toLook, toClear }
}
