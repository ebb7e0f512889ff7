import { completeLine, type GivenLine } from '../builder/givenLine.ts'
import { toGrid } from '@loopwright/kernel'
import type { LineSpec, PathSpec } from '../spec.ts'

/** Start or end of a move: standing still, or at the path's speed. */
export const REST = 0
export const SPEED = 1

/** Derived times of all paths, seconds on the clock grid; NaN where the drive does not give them. (MODEL.md §3) */
export interface DerivedTimes {
  /** length 4·paths: `4·path + 2·start + end`, each REST or SPEED */
  readonly move: Float64Array
  /** length 2·paths: `2·path + start` */
  readonly clear: Float64Array
}

/**
 * Time to cover a distance with constant acceleration = braking.
 *
 * "At speed" means at v also where the distance is too short to reach it (a simplification of the model).
 *
 * @param distance      metres, > 0
 * @param speed         metres per second, > 0
 * @param acceleration  metres per second squared, > 0; null: no ramp
 * @param ramps         0: at speed at both ends, 1: at one end at rest, 2: at both
 * @returns             seconds, not yet rounded to the grid
 * @see MODEL.md §3; uniformly accelerated motion
 * @example moveTime(1.5, 0.25, 0.4, 2) // => 6.625
 */
export function moveTime(distance: number, speed: number, acceleration: number | null, ramps: 0 | 1 | 2): number {
  if (acceleration === null || ramps === 0) return distance / speed
  const rampDistance = (speed * speed) / (2 * acceleration)
  const ramp = speed / (2 * acceleration)
  if (ramps === 1) return distance >= rampDistance ? distance / speed + ramp : Math.sqrt((2 * distance) / acceleration)
  return distance >= 2 * rampDistance ? distance / speed + ramp + ramp : 2 * Math.sqrt(distance / acceleration)
}

/**
 * Time from a move's start until the tail has passed the sensor and the control has seen it (single release).
 *
 * @param carrierLength  metres in the direction of travel, > sensorBefore
 * @param sensorBefore   metres by which the sensor lies before the stop point, ≥ 0
 * @param speed          metres per second, > 0
 * @param acceleration   metres per second squared, > 0; null: no ramp
 * @param reaction       seconds, ≥ 0
 * @param start          REST or SPEED
 * @returns              seconds, not yet rounded to the grid
 * @see MODEL.md §3
 * @example clearTime(1.2, 0.078125, 0.25, 0.4, 0.15, 0) // => 4.95
 */
export function clearTime(
  carrierLength: number,
  sensorBefore: number,
  speed: number,
  acceleration: number | null,
  reaction: number,
  start: typeof REST | typeof SPEED,
): number {
  const tail = carrierLength - sensorBefore
  if (acceleration === null || start === SPEED) return tail / speed + reaction
  return tail >= (speed * speed) / (2 * acceleration)
    ? tail / speed + speed / (2 * acceleration) + reaction
    : Math.sqrt((2 * tail) / acceleration) + reaction
}

/**
 * The four move times and two clear times of every path that its drive gives.
 *
 * @example derivedTimes(scenario.line).move[0] // => 2
 */
export function derivedTimes(given: GivenLine): DerivedTimes {
  const spec = completeLine(given)
  const move = new Float64Array(4 * spec.paths.length).fill(Number.NaN)
  const clear = new Float64Array(2 * spec.paths.length).fill(Number.NaN)
  spec.paths.forEach((path, p) => {
    const { speedMetresPerSecond: v, accelerationMetresPerSecondSquared: a, distanceMetres: d } = path
    if (v !== null && d !== null) {
      for (const start of [REST, SPEED]) {
        for (const end of [REST, SPEED]) {
          const ramps = ((start === REST ? 1 : 0) + (end === REST ? 1 : 0)) as 0 | 1 | 2
          move[4 * p + 2 * start + end] = toGrid(moveTime(d, v, a, ramps))
        }
      }
    }
    for (const start of [REST, SPEED] as const) clear[2 * p + start] = clearOf(spec, path, start)
  })
  return { move, clear }
}

/** places of a pace: move times from 0 on, `2·start + end`, then clear times by start */
const PACE = 8
export const PACE_CLEAR = 4

/** The same six times again and again are kept once: many paths are alike, and what is read at every move should be near. */
export interface Paces {
  /** by path: where its pace begins */
  readonly pathPace: Int32Array
  readonly paceSeconds: Float64Array
}

export function distinctPaces({ move, clear }: DerivedTimes): Paces {
  const found = new Map<string, number>()
  const seconds: number[] = []
  const pathPace = Int32Array.from({ length: clear.length / 2 }, (_, p) => {
    const pace = [...move.subarray(4 * p, 4 * p + 4), ...clear.subarray(2 * p, 2 * p + 2)]
    const key = pace.join()
    const known = found.get(key)
    if (known !== undefined) return known
    const at = seconds.length
    found.set(key, at)
    seconds.push(...pace, ...new Array<number>(PACE - pace.length).fill(Number.NaN))
    return at
  })
  return { pathPace, paceSeconds: Float64Array.from(seconds) }
}

function clearOf(spec: LineSpec, path: PathSpec, start: typeof REST | typeof SPEED): number {
  const zone = spec.zones[path.from]
  if (zone === undefined) return Number.NaN
  if (zone.release === 'train' && zone.transfer === null) return toGrid(spec.staggerSeconds)
  const length = path.across ? spec.carriers.widthMetres : spec.carriers.lengthMetres
  const { speedMetresPerSecond: v, accelerationMetresPerSecondSquared: a } = path
  if (length === null || v === null) return Number.NaN
  return toGrid(clearTime(length, zone.sensorBeforeStopMetres, v, a, spec.reactionSeconds, start))
}
