import { betaQuantile } from '../special/betaQuantile.ts'
import { betaTails } from '../special/incompleteBeta.ts'
import type { Kind, Of } from './kind.ts'
import { notTriple } from './reasons.ts'

/** An expert's triple as a beta distribution with mean (min + 4·mode + max)/6. Its inverse is solved for, which takes microseconds and allocates. */
export const pert: Kind<'pert'> = {
  fields: { min: ['value'], mode: ['value'], max: ['value'] },
  says: 'least, most frequent, greatest time; smoother and narrower than triangular',
  inverse: () => pertInto,
  words: (d, to) => `${to.value(d.min)} to ${to.value(d.max)}, most often ${to.value(d.mode)}, PERT`,
  reasons: notTriple,
  parameters: (d) => [d.min, d.max, alpha(d), beta(d)],
  mean: (d) => (d.min + 4 * d.mode + d.max) / 6,
  variance: (d) => ((d.max - d.min) ** 2 * alpha(d) * beta(d)) / 252,
  cdf: (d, x) => (x <= d.min ? 0 : x >= d.max ? 1 : betaTails(alpha(d), beta(d), (x - d.min) / (d.max - d.min)).lower),
  momentBelow(d, order, x) {
    const y = Math.min(1, Math.max(0, (x - d.min) / (d.max - d.min)))
    const a = alpha(d)
    const b = beta(d)
    const span = d.max - d.min
    const zeroth = betaTails(a, b, y).lower
    const first = (a / 6) * betaTails(a + 1, b, y).lower
    if (order === 1) return d.min * zeroth + span * first
    const second = ((a * (a + 1)) / 42) * betaTails(a + 2, b, y).lower
    return d.min ** 2 * zeroth + 2 * d.min * span * first + span ** 2 * second
  },
}

/** alpha + beta = 6 for every triple */
const alpha = (d: Of<'pert'>): number => 1 + (4 * (d.mode - d.min)) / (d.max - d.min)
const beta = (d: Of<'pert'>): number => 1 + (4 * (d.max - d.mode)) / (d.max - d.min)

/** parameters: min, max, alpha, beta */
function pertInto(p: Float64Array, o: number, io: Float64Array): void {
  const min = p[o]!
  io[0] = min + (p[o + 1]! - min) * betaQuantile(io[0]!, p[o + 2]!, p[o + 3]!).x
}
