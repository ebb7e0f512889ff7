import type { Kind } from './kind.ts'
import { belowZero, notShare } from './reasons.ts'
import { toOpenUnit } from './unit.ts'

/** A base time and, with a probability, another time on top; one uniform makes both: u < 1 − p gives the base alone, else `of` at (u − 1 + p)/p (MODEL.md §9). */
export const occasional: Kind<'occasional'> = {
  fields: { base: ['value', 'every time'], probability: ['share', 'how often the other time comes on top'], of: ['distribution'] },
  says: 'a base time, and now and then another on top',
  inverse: () => null,
  around: { of: (d) => d.of, before: occasionalBefore, after: occasionalAfter },
  atoms: true,
  words: (d, to) => `${to.value(d.base)}, and with ${to.share(d.probability)} chance on top: ${to.distribution(d.of)}`,
  reasons: (d, inner) => [
    ...belowZero('base', d.base),
    ...notShare('probability', d.probability),
    ...(d.of?.kind === 'replay' ? ['of is a replay list, which takes no uniform; use its values as an empirical distribution'] : []),
    ...inner.reasons(d.of).map((reason) => `of: ${reason}`),
  ],
  parameters: (d) => [d.base, d.probability],
  mean: (d, inner) => d.base + d.probability * inner.mean(d.of),
  variance: (d, inner) => d.probability * inner.variance(d.of) + d.probability * (1 - d.probability) * inner.mean(d.of) ** 2,
  cdf(d, x, inclusive, inner) {
    if (x < d.base || (!inclusive && x === d.base)) return 0
    return 1 - d.probability + d.probability * inner.cdf(d.of, x - d.base, inclusive)
  },
  momentBelow(d, order, x, inclusive, inner) {
    if (x < d.base || (!inclusive && x === d.base)) return 0
    const top = x - d.base
    const share = inner.cdf(d.of, top, inclusive)
    const first = inner.momentBelow(d.of, 1, top, inclusive)
    if (order === 1) return (1 - d.probability) * d.base + d.probability * (d.base * share + first)
    const second = inner.momentBelow(d.of, 2, top, inclusive)
    return (1 - d.probability) * d.base ** 2 + d.probability * (d.base ** 2 * share + 2 * d.base * first + second)
  },
}

/** parameters: base, probability. True: `io[0]` now holds the uniform of the time on top; false: it holds the value. */
function occasionalBefore(p: Float64Array, o: number, io: Float64Array): boolean {
  const u = io[0]!
  const probability = p[o + 1]!
  if (u < 1 - probability) {
    io[0] = p[o]!
    return false
  }
  io[0] = (u - 1 + probability) / probability
  toOpenUnit(io)
  return true
}

/** After the inverse of the time on top. */
function occasionalAfter(p: Float64Array, o: number, io: Float64Array): void {
  io[0] = p[o]! + io[0]!
}
