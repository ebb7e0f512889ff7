import type { Kind } from './kind.ts'
import { belowZero, notRising } from './reasons.ts'

/** Every value between min and max equally likely. */
export const uniform: Kind<'uniform'> = {
  fields: { min: ['value'], max: ['value'] },
  says: 'any time between two, equally likely',
  inverse: () => uniformInto,
  words: (d, to) => `${to.value(d.min)} to ${to.value(d.max)}, uniform`,
  reasons(d) {
    const found = [...belowZero('min', d.min), ...belowZero('max', d.max)]
    return found.length > 0 ? found : notRising('min', d.min, 'max', d.max)
  },
  parameters: (d) => [d.min, d.max],
  mean: (d) => (d.min + d.max) / 2,
  variance: (d) => (d.max - d.min) ** 2 / 12,
  cdf: (d, x) => Math.min(1, Math.max(0, (x - d.min) / (d.max - d.min))),
  momentBelow(d, order, x) {
    const top = Math.min(d.max, Math.max(d.min, x))
    const power = order + 1
    return (top ** power - d.min ** power) / (power * (d.max - d.min))
  },
}

/** parameters: min, max */
function uniformInto(p: Float64Array, o: number, io: Float64Array): void {
  const min = p[o]!
  io[0] = min + (p[o + 1]! - min) * io[0]!
}
