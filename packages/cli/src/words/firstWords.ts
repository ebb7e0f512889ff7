import { formatNumber } from '@loopwright/charts'
import type { FirstAnswer } from '@loopwright/study'

/**
 * What the first runs of a sweep say, in one sentence.
 *
 * @example firstWords({ replications: 20, leading: 13, unitsMean: 152.34, fewest: 11, within: 0.01 }) // => 'so far, 20 runs of each: most with 13 carriers (152.3 units); 11 are the fewest within 1 % of that'
 */
export function firstWords({ replications, leading, unitsMean, fewest, within }: FirstAnswer): string {
  const most = `so far, ${replications} runs of each: most with ${leading} carriers (${formatNumber(unitsMean, 1)} units)`
  const share = formatNumber(100 * within, 0)
  return fewest === leading
    ? `${most}; no fewer come within ${share} % of that`
    : `${most}; ${fewest} are the fewest within ${share} % of that`
}
