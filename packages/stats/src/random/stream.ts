import seedrandom from 'seedrandom'
import { checkSeed, ZERO_COUNTS_AS } from './alea.ts'

/** The next uniform, 0 < u < 1. */
export type Stream = () => number

/**
 * One named stream as a function, for everything outside the hot loop.
 *
 * @param seed         not empty, without '/'
 * @param replication  whole number from 0
 * @param name         what the stream is for (MODEL.md §9); any text
 * @throws StatisticsError E_SEED
 * @example stream('42', 99, 'release/S1')() // => 0.09405615053089666
 */
export function stream(seed: string, replication: number, name: string): Stream {
  checkSeed(seed, replication)
  const alea = seedrandom.alea(`${seed}/${replication}/${name}`)
  return () => alea.double() || ZERO_COUNTS_AS
}
