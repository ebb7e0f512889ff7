/** Which replications to run next: all parts go forward together, so that whatever is there when a study is stopped can be compared. */

export interface Chunk {
  /** place in the list of parts: of the counts of a sweep, of the lines of a comparison */
  readonly index: number
  /** replications from (included) … to (excluded) */
  readonly from: number
  readonly to: number
}

/** events that make a chunk: some tens of milliseconds, long beside a message and short beside a second */
const CHUNK_EVENTS = 60_000
const CHUNK_MAX = 50

/**
 * Hands out chunks: always of a part that is least far on, the first in the list of those; single replications until the work of one is known.
 * How the work is cut changes no result.
 */
export class Schedule {
  readonly #next: number[]
  readonly #events: number[]
  readonly #ends: readonly number[]

  /**
   * @param parts         how many there are
   * @param replications  of each, from 0 on; or for each part where it begins and ends
   */
  constructor(parts: number, replications: number | readonly Pick<Chunk, 'from' | 'to'>[]) {
    const ranges = typeof replications === 'number' ? Array.from({ length: parts }, () => ({ from: 0, to: replications })) : replications
    this.#next = ranges.map(({ from, to }) => (from < to ? from : Number.POSITIVE_INFINITY))
    this.#ends = ranges.map(({ to }) => to)
    this.#events = ranges.map(() => 0)
  }

  /** The next chunk; null when all have been handed out. */
  next(): Chunk | null {
    const from = Math.min(...this.#next)
    if (from === Number.POSITIVE_INFINITY) return null
    const index = this.#next.indexOf(from)
    const events = this.#events[index]!
    const size = events > 0 ? Math.min(CHUNK_MAX, Math.max(1, Math.floor(CHUNK_EVENTS / events))) : 1
    const to = Math.min(this.#ends[index]!, from + size)
    this.#next[index] = to < this.#ends[index]! ? to : Number.POSITIVE_INFINITY
    return { index, from, to }
  }

  /** Tells how many events one replication of a part took. */
  learn(index: number, events: number): void {
    this.#events[index] = events
  }
}
