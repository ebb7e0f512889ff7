import { formatNumber } from '@loopwright/charts/table'
import type { FirstAnswer } from '@loopwright/study'

/**
 * What the first runs of a sweep say, in one sentence.
 *
 * @example firstWords({ replications: 10, leading: 13, unitsMean: 152.34, fewest: 11, within: 0.01 }) // => 'so far, after 10 runs of each, 13 carriers make the most (152.3 units); 11 are the fewest within 1 % of that'
 */
export function firstWords({ replications, leading, unitsMean, fewest, within }: FirstAnswer): string {
  const most = `so far, after ${replications} runs of each, ${leading} ${leading === 1 ? 'carrier makes' : 'carriers make'} the most (${formatNumber(unitsMean, 1)} units)`
  const share = formatNumber(100 * within, 0)
  return fewest === leading
    ? `${most}; with fewer it is more than ${share} % less`
    : `${most}; ${fewest} ${fewest === 1 ? 'is' : 'are'} the fewest within ${share} % of that`
}
