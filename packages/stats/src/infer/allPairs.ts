import { tooFew } from '../messages.ts'
import { needLevel } from '../samples.ts'
import { StatisticsError } from '../statisticsError.ts'
import { type PairedDifference, pairedDifference } from './pairedDifference.ts'

/** One pair of scenarios: first less second. */
export interface ComparedPair {
  /** index of the scenario, from 0 */
  readonly first: number
  /** index of the scenario, from 0; below first */
  readonly second: number
  readonly difference: PairedDifference
}

const SCENARIOS_MAX = 10

/**
 * All pairs of scenarios that ran in the same worlds; the level holds for all of them together (Bonferroni).
 *
 * @param outputs  by scenario, 2 … 10, then by replication
 * @param level    for all pairs at once
 * @throws StatisticsError E_TOO_FEW, E_TOO_LARGE, E_UNEQUAL_LENGTH, E_NOT_A_NUMBER, E_DOMAIN
 * @example allPairs([[1, 2], [1, 2], [2, 3]]).map((pair) => [pair.first, pair.second]) // => [[1, 0], [2, 0], [2, 1]]
 */
export function allPairs(outputs: readonly (readonly number[])[], level: number = 0.95): ComparedPair[] {
  const k = outputs.length
  if (k < 2) throw tooFew('a comparison', k, 'scenario', 2)
  if (k > SCENARIOS_MAX) {
    throw new StatisticsError(
      'E_TOO_LARGE',
      `${k} scenarios have too many pairs for one table: compare at most ${SCENARIOS_MAX}, or select the best of them.`,
    )
  }
  needLevel(level)
  const pairs = (k * (k - 1)) / 2
  const each = 1 - (1 - level) / pairs
  const found: ComparedPair[] = []
  for (let first = 1; first < k; first++) {
    for (let second = 0; second < first; second++) {
      found.push({ first, second, difference: pairedDifference(outputs[first]!, outputs[second]!, each) })
    }
  }
  return found
}
