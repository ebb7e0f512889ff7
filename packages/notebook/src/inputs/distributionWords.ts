import { type Distribution, distributionMean } from '@loopwright/stats'
import { secondsText, shareText, shortNumber } from './quantityWords.ts'

/**
 * A duration in words: mean and spread, and by which distribution.
 *
 * @example distributionWords({ kind: 'exponential', mean: 5400 }) // => 'mean 90 min, exponential'
 */
export function distributionWords(d: Distribution): string {
  switch (d.kind) {
    case 'constant':
      return secondsText(d.value)
    case 'uniform':
      return `${secondsText(d.min)} to ${secondsText(d.max)}, uniform`
    case 'triangular':
      return `${secondsText(d.min)} to ${secondsText(d.max)}, most often ${secondsText(d.mode)}, triangular`
    case 'pert':
      return `${secondsText(d.min)} to ${secondsText(d.max)}, most often ${secondsText(d.mode)}, PERT`
    case 'exponential':
      return `mean ${secondsText(d.mean)}, exponential`
    case 'lognormal':
    case 'gamma':
      return `mean ${secondsText(d.mean)}, cv ${shareText(d.cv)}, ${d.kind}`
    case 'weibull':
      return `mean ${secondsText(distributionMean(d))}, shape ${shortNumber(d.shape)}, Weibull`
    case 'empirical':
      return `${d.values.length} measured values, mean ${secondsText(distributionMean(d))}${d.interpolate ? ', interpolated' : ''}`
    case 'discrete':
      return `${d.values.length} values by weight, mean ${secondsText(distributionMean(d))}`
    case 'replay':
      return `list of ${d.values.length} values in turn, mean ${secondsText(distributionMean(d))}`
    case 'occasional':
      return `${secondsText(d.base)}, and with ${shareText(d.probability)} chance on top: ${distributionWords(d.of)}`
    case 'limited':
      return `${distributionWords(d.of)}${limits(d)}`
  }
}

function limits(d: Extract<Distribution, { kind: 'limited' }>): string {
  const parts = [
    d.shift > 0 ? `shifted by ${secondsText(d.shift)}` : null,
    d.min === null ? null : `at least ${secondsText(d.min)}`,
    d.max === null ? null : `at most ${secondsText(d.max)}`,
  ].filter((part) => part !== null)
  return parts.length === 0 ? '' : `; ${parts.join(', ')}`
}
