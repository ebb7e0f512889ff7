import { tooFew } from '../messages.ts'
import { needLevel } from '../samples.ts'
import type { ComparedPair } from './allPairs.ts'
import { pairedDifference } from './pairedDifference.ts'

/**
 * Each scenario less the first, all run in the same worlds; the level holds for all of them together (Bonferroni over k − 1 pairs).
 *
 * For many scenarios, of which all pairs would be too many. Dunnett's constant is for independent systems with one variance, and would be wrong here.
 *
 * @param outputs  by scenario, two or more, then by replication
 * @param level    for all pairs at once
 * @throws StatisticsError E_TOO_FEW, E_UNEQUAL_LENGTH, E_NOT_A_NUMBER, E_DOMAIN
 * @example againstFirst([[1, 2], [1, 2], [2, 3]]).map((pair) => [pair.first, pair.second]) // => [[1, 0], [2, 0]]
 */
export function againstFirst(outputs: readonly (readonly number[])[], level: number = 0.95): ComparedPair[] {
  const k = outputs.length
  if (k < 2) throw tooFew('a comparison', k, 'scenario', 2)
  needLevel(level)
  const each = 1 - (1 - level) / (k - 1)
  return outputs.slice(1).map((units, index) => ({ first: index + 1, second: 0, difference: pairedDifference(units, outputs[0]!, each) }))
}
