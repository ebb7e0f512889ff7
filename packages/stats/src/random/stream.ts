import { StreamTable } from './streamTable.ts'

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
  const table = new StreamTable(seed, replication, [name])
  return () => {
    table.next(0)
    return table.u[0]!
  }
}
