import type { Distribution } from './distribution.ts'
import type { Inner, Kind, Of, Words } from './kind.ts'
import { belowZero, notRising } from './reasons.ts'
import { toOpenUnit } from './unit.ts'

/** limits must keep at least this share */
const KEPT_LEAST = 0.01

/** Another distribution with a shift added and then values outside min … max cut away, by conditioning: u → F(min) + u·(F(max) − F(min)). */
export const limited: Kind<'limited'> = {
  fields: {
    of: ['distribution'],
    shift: ['extra', 'added to every value'],
    min: ['limit', 'values below are cut away'],
    max: ['limit', 'values above are cut away'],
  },
  says: 'another distribution, moved by "shift" and cut at "min" and "max"',
  inverse: () => null,
  around: {
    // limits condition the cdf, so that a list under them is taken in the order of its values instead of the listed one
    of: (d) => (d.min !== null || d.max !== null ? rising(d.of) : d.of),
    before: limitedBefore,
    after: limitedAfter,
  },
  atoms: true,
  draws: (d, inner) => inner.draws(d.of),
  words: (d, to) => `${to.distribution(d.of)}${limitWords(d, to)}`,
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
  parameters(d, inner) {
    const { low, high } = keptRange(d, inner)
    return [low, high - low, d.shift, d.min ?? -Infinity, d.max ?? Infinity]
  },
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

/** Lists inside, in the order of their values. */
function rising(d: Distribution): Distribution {
  if (d.kind === 'limited' || d.kind === 'occasional') return { ...d, of: rising(d.of) }
  if (d.kind !== 'discrete') return d
  const order = [...d.values.keys()].sort((a, b) => d.values[a]! - d.values[b]!)
  return { ...d, values: order.map((i) => d.values[i]!), weights: order.map((i) => d.weights[i]!) }
}

function limitWords(d: Of<'limited'>, to: Words): string {
  const parts = [
    d.shift > 0 ? `shifted by ${to.value(d.shift)}` : null,
    d.min === null ? null : `at least ${to.value(d.min)}`,
    d.max === null ? null : `at most ${to.value(d.max)}`,
  ].filter((part) => part !== null)
  return parts.length === 0 ? '' : `; ${parts.join(', ')}`
}

/** The part of `of` that stays: chances below it, and up to its end. */
function keptRange(d: Of<'limited'>, inner: Inner): { low: number; high: number } {
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
function limitedBefore(p: Float64Array, o: number, io: Float64Array): boolean {
  io[0] = p[o]! + io[0]! * p[o + 1]!
  toOpenUnit(io)
  return true
}

/** After the inverse of `of`: adds the shift; rounding may not leave the limits. */
function limitedAfter(p: Float64Array, o: number, io: Float64Array): void {
  io[0] = Math.min(p[o + 4]!, Math.max(p[o + 3]!, io[0]! + p[o + 2]!))
}
