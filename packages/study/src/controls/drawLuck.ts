/** Luck of draws that are counted: the first ones of a stream, and those of a stretch of serials. */
import { type Distribution, distributionMean } from '@loopwright/stats'
import { Draws, type World } from './series.ts'
import type { Luck, Stretch } from './stopLuck.ts'

/** Seconds that a stretch of uses of a stream takes more than is to be expected; null where they are no matter of chance. */
export function useLuckOf(stream: string, seconds: Distribution): Luck | null {
  const draws = new Draws(seconds)
  if (!draws.random) return null
  const mean = distributionMean(seconds)
  return (world, { from, to }) => sumOver({ from, to }, (k) => draws.at(world, stream, k) - mean)
}

/** Products of a stretch of serials that an inspection rejects, more than is to be expected. */
export const rejectLuckOf =
  (task: string, probability: number): Luck =>
  (world: World, serials: Stretch) =>
    sumOver(serials, (serial) => (world.uniform(`inspect/${task}`, serial) < probability ? 1 : 0) - probability)

export function sumOver({ from, to }: Stretch, of: (k: number) => number): number {
  let sum = 0
  for (let k = from; k < to; k++) sum += of(k)
  return sum
}
