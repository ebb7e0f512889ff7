import { Tally } from '../accumulate/tally.ts'
import { notAShare, tooFew, unequalLength } from '../messages.ts'
import { needSample } from '../samples.ts'
import { tQuantile } from '../special/tQuantile.ts'

/** One system against the best of the others. */
export interface BestRow {
  readonly system: number
  readonly mean: number
  /** at most so much worse than the best of the others: 0 or below */
  readonly low: number
  /** at most so much better than the best of the others: 0 or above */
  readonly high: number
  /** cannot be told from the best */
  readonly maybeBest: boolean
}

/** Every system against the best of the others. */
export interface BestTable {
  readonly n: number
  readonly alpha: number
  /** quantile used for each pair */
  readonly t: number
  readonly rows: readonly BestRow[]
}

/**
 * Multiple comparisons with the best: for every system an interval of its distance from the best of the others; all hold together with chance 1 − alpha.
 *
 * Made of pairs in common worlds; a pooled variance or a constant for independent systems would be wrong here.
 *
 * @param outputs  by system, two or more, then by replication; larger is better
 * @param alpha    above 0 and below 1
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_UNEQUAL_LENGTH, E_DOMAIN
 * @see Hsu, Multiple Comparisons (1996); Yang & Nelson (1991) and Nelson & Matejcik (1995) for pairs in common worlds, from memory
 * @example bestTable([[412, 418, 409], [400, 404, 397], [413, 416, 411]]).rows.map(({ maybeBest }) => maybeBest) // => [true, false, true]
 */
export function bestTable(outputs: readonly (readonly number[])[], alpha: number = 0.05): BestTable {
  const k = outputs.length
  if (k < 2) throw tooFew('a table against the best', k, 'system', 2)
  if (!(alpha > 0 && alpha < 1)) throw notAShare('The chance of error', alpha)
  const n = outputs[0]!.length
  outputs.forEach((values, i) => {
    if (values.length !== n) throw unequalLength('System 1', n, `system ${i + 1}`, values.length)
    needSample('a table against the best', values, 'replication', 2)
  })
  const t = tQuantile(1 - alpha / (k - 1), n - 1)
  const means = outputs.map((values) => Tally.of(values).mean!)
  const width = outputs.map((a) => outputs.map((b) => (t * Tally.of(a.map((value, j) => value - b[j]!)).sd!) / Math.sqrt(n)))
  const others = (i: number): number[] => [...Array(k).keys()].filter((l) => l !== i)
  const upper = means.map((mean, i) => Math.min(...others(i).map((l) => mean - means[l]! + width[i]![l]!)))
  // ≥, not >: two systems that are identical in every replication would else leave none
  const group = upper.map((value) => value >= 0)
  const rows = means.map((mean, i) => {
    const rivals = others(i).filter((l) => group[l])
    const low = rivals.length === 0 ? 0 : Math.min(...rivals.map((l) => mean - means[l]! - width[i]![l]!))
    return { system: i, mean, low: Math.min(0, low), high: Math.max(0, upper[i]!), maybeBest: group[i]! }
  })
  return { n, alpha, t, rows }
}
