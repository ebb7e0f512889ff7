import { toGrid } from '@loopwright/kernel'
import { type Distribution, distributionMean } from '@loopwright/stats'

/**
 * Mean of a duration; a constant as the engine takes it, on the clock grid, so that sums are exact. (MODEL.md §1)
 *
 * @returns  seconds
 * @example meanSeconds({ kind: 'constant', value: 0.1 }) // => 0.10000038146972656
 */
export function meanSeconds(time: Distribution): number {
  return time.kind === 'constant' ? toGrid(time.value) : distributionMean(time)
}
