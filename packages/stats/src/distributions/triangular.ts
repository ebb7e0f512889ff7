import type { Kind, Of } from './kind.ts'
import { notTriple } from './reasons.ts'

/** An expert's triple with straight sides; its mean is (min + mode + max)/3, above that of PERT with the same triple where the long side is above. */
export const triangular: Kind<'triangular'> = {
  fields: { min: ['value'], mode: ['value'], max: ['value'] },
  says: 'least, most frequent, greatest time',
  inverse: () => triangularInto,
  words: (d, to) => `${to.value(d.min)} to ${to.value(d.max)}, most often ${to.value(d.mode)}, triangular`,
  reasons: notTriple,
  parameters: (d) => [d.min, d.max, (d.mode - d.min) / (d.max - d.min), d.mode - d.min, d.max - d.mode],
  mean: (d) => (d.min + d.mode + d.max) / 3,
  variance: (d) => (d.min ** 2 + d.mode ** 2 + d.max ** 2 - d.min * d.mode - d.min * d.max - d.mode * d.max) / 18,
  cdf(d, x) {
    if (x <= d.min) return 0
    if (x >= d.max) return 1
    const span = d.max - d.min
    return x < d.mode ? (x - d.min) ** 2 / (span * (d.mode - d.min)) : 1 - (d.max - x) ** 2 / (span * (d.max - d.mode))
  },
  momentBelow(d, order, x) {
    const left = Math.min(d.mode, Math.max(d.min, x)) - d.min
    const right = Math.min(d.max, Math.max(d.mode, x))
    return risingSide(d, order, left) + fallingSide(d, order, d.max - right)
  },
}

/** ∫ over the side below mode, in t = x − min from 0 to `to` */
function risingSide(d: Of<'triangular'>, order: 1 | 2, to: number): number {
  if (d.mode === d.min) return 0
  const slope = 2 / ((d.max - d.min) * (d.mode - d.min))
  if (order === 1) return slope * ((d.min * to ** 2) / 2 + to ** 3 / 3)
  return slope * ((d.min ** 2 * to ** 2) / 2 + (2 * d.min * to ** 3) / 3 + to ** 4 / 4)
}

/** ∫ over the side above mode, in t = max − x from `from` to max − mode */
function fallingSide(d: Of<'triangular'>, order: 1 | 2, from: number): number {
  const to = d.max - d.mode
  if (to === 0) return 0
  const slope = 2 / ((d.max - d.min) * to)
  const part = (t: number): number =>
    order === 1 ? (d.max * t ** 2) / 2 - t ** 3 / 3 : (d.max ** 2 * t ** 2) / 2 - (2 * d.max * t ** 3) / 3 + t ** 4 / 4
  return slope * (part(to) - part(from))
}

/** parameters: min, max, share below mode, mode − min, max − mode */
function triangularInto(p: Float64Array, o: number, io: Float64Array): void {
  const u = io[0]!
  const min = p[o]!
  const max = p[o + 1]!
  io[0] = u < p[o + 2]! ? min + Math.sqrt(u * (max - min) * p[o + 3]!) : max - Math.sqrt((1 - u) * (max - min) * p[o + 4]!)
}
