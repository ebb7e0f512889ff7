import type { Inner, Kind, Of } from './kind.ts'
import { belowZero, notRising } from './reasons.ts'
import { toOpenUnit } from './unit.ts'

/** limits must keep at least this share */
const KEPT_LEAST = 0.01

/** Another distribution with a shift added and then values outside min … max cut away, by conditioning: u → F(min) + u·(F(max) − F(min)). */
export const limited: Kind<'limited'> = {
  reasons(d, inner) {
    const found = [
      ...belowZero('shift', d.shift),
      ...(d.min === null ? [] : belowZero('min', d.min)),
      ...(d.max === null ? [] : belowZero('max', d.max)),
      ...inner.reasons(d.of).map((reason) => `of: ${reason}`),
    ]
    if (found.length > 0) return found
    if (d.min === null && d.max === null) return []
    if (d.of.kind === 'replay') return ['a replay list is taken as it is; limits cannot apply to it']
    if (d.min !== null && d.max !== null) found.push(...notRising('min', d.min, 'max', d.max))
    if (found.length > 0) return found
    const { low, high } = keptRange(d, inner)
    const kept = high - low
    return kept >= KEPT_LEAST
      ? []
      : [`the limits cut away nearly all of it: they keep ${(100 * kept).toPrecision(2)} %; at least 1 % must stay`]
  },
  parameters: (d) => [0, 1, d.shift, d.min ?? -Infinity, d.max ?? Infinity],
  mean: (d, inner) => moment(d, 1, Infinity, true, inner),
  variance(d, inner) {
    if (d.min === null && d.max === null) return inner.variance(d.of)
    const mean = moment(d, 1, Infinity, true, inner)
    return Math.max(0, moment(d, 2, Infinity, true, inner) - mean * mean)
  },
  cdf(d, x, inclusive, inner) {
    const { low, high } = keptRange(d, inner)
    return Math.min(1, Math.max(0, (inner.cdf(d.of, x - d.shift, inclusive) - low) / (high - low)))
  },
  momentBelow: moment,
}

/** The part of `of` that stays: chances below it, and up to its end. */
export function keptRange(d: Of<'limited'>, inner: Inner): { low: number; high: number } {
  return {
    low: d.min === null ? 0 : inner.cdf(d.of, d.min - d.shift, false),
    high: d.max === null ? 1 : inner.cdf(d.of, d.max - d.shift, true),
  }
}

function moment(d: Of<'limited'>, order: 1 | 2, x: number, inclusive: boolean, inner: Inner): number {
  const { low, high } = keptRange(d, inner)
  const toMax = d.max === null ? Infinity : d.max
  const within = x < toMax
  const top = (within ? x : toMax) - d.shift
  const topInclusive = within ? inclusive : true
  const bottom = d.min === null ? -Infinity : d.min - d.shift
  if (top < bottom) return 0
  const zeroth = inner.cdf(d.of, top, topInclusive) - low
  const first = inner.momentBelow(d.of, 1, top, topInclusive) - (d.min === null ? 0 : inner.momentBelow(d.of, 1, bottom, false))
  if (order === 1) return (first + d.shift * zeroth) / (high - low)
  const second = inner.momentBelow(d.of, 2, top, topInclusive) - (d.min === null ? 0 : inner.momentBelow(d.of, 2, bottom, false))
  return (second + 2 * d.shift * first + d.shift ** 2 * zeroth) / (high - low)
}

/** parameters: F(min), F(max) − F(min), shift, min, max. Before the inverse of `of`: the uniform in `io[0]` becomes the conditioned one. */
export function limitedBefore(p: Float64Array, o: number, io: Float64Array): void {
  io[0] = p[o]! + io[0]! * p[o + 1]!
  toOpenUnit(io)
}

/** After the inverse of `of`: adds the shift; rounding may not leave the limits. */
export function limitedAfter(p: Float64Array, o: number, io: Float64Array): void {
  io[0] = Math.min(p[o + 4]!, Math.max(p[o + 3]!, io[0]! + p[o + 2]!))
}
