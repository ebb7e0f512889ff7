import { type Kind, power } from './kind.ts'
import { belowZero } from './reasons.ts'

/** Always the same value; a draw takes no uniform. */
export const constant: Kind<'constant'> = {
  fields: { value: ['value'] },
  says: 'always the same time',
  inverse: () => constantInto,
  atoms: true,
  draws: () => 'nothing',
  words: (d, to) => to.value(d.value),
  reasons: (d) => belowZero('value', d.value),
  parameters: (d) => [d.value],
  mean: (d) => d.value,
  variance: () => 0,
  cdf: (d, x, inclusive) => (d.value < x || (inclusive && d.value === x) ? 1 : 0),
  momentBelow: (d, order, x, inclusive) => (d.value < x || (inclusive && d.value === x) ? power(d.value, order) : 0),
}

/** parameters: value */
export function constantInto(p: Float64Array, o: number, io: Float64Array): void {
  io[0] = p[o]!
}
