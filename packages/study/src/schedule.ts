/** Which replications to run next: all counts go forward together, so that whatever is there when a sweep is stopped can be compared. */

export interface Chunk {
  /** place in the list of counts */
  readonly index: number
  /** replications from (included) … to (excluded) */
  readonly from: number
  readonly to: number
}

/** events that make a chunk: some tens of milliseconds, long beside a message and short beside a second */
const CHUNK_EVENTS = 60_000
const CHUNK_MAX = 50

/**
 * Hands out chunks: always of a count that is least far on, the first in the list of those; single replications until the work of one is known.
 * How the work is cut changes no result.
 */
export class Schedule {
  readonly #next: number[]
  readonly #events: number[]
  readonly #replications: number

  /**
   * @param counts        how many counts are tried
   * @param replications  of each
   */
  constructor(counts: number, replications: number) {
    this.#next = new Array<number>(counts).fill(0)
    this.#events = new Array<number>(counts).fill(0)
    this.#replications = replications
  }

  /** The next chunk; null when all have been handed out. */
  next(): Chunk | null {
    const from = Math.min(...this.#next)
    if (from >= this.#replications) return null
    const index = this.#next.indexOf(from)
    const events = this.#events[index]!
    const size = events > 0 ? Math.min(CHUNK_MAX, Math.max(1, Math.floor(CHUNK_EVENTS / events))) : 1
    const to = Math.min(this.#replications, from + size)
    this.#next[index] = to
    return { index, from, to }
  }

  /** Tells how many events one replication of a count took. */
  learn(index: number, events: number): void {
    this.#events[index] = events
  }
}
