import { type Distribution, distributionWords as wordsOf } from '@loopwright/stats'
import { secondsText, shareText, shortNumber } from './quantityWords.ts'

/**
 * A duration in words: mean and spread, and by which distribution.
 *
 * @example distributionWords({ kind: 'exponential', mean: 5400 }) // => 'mean 90 min, exponential'
 */
export function distributionWords(d: Distribution): string {
  return wordsOf(d, { value: secondsText, share: shareText, number: shortNumber })
}
