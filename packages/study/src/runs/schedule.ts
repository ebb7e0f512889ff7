/** Which replications to run next: all parts go forward together, so that whatever is there when a study is stopped can be compared. */

export interface Chunk {
  /** place in the list of parts: of the counts of a sweep, of the lines of a comparison */
  readonly index: number
  /** replications from (included) … to (excluded) */
  readonly from: number
  readonly to: number
}

export interface PartRange {
  /** replications from (included) … to (excluded) */
  readonly from: number
  readonly to: number
  /** replications of this part for each one of a part with pace 1; default 1 */
  readonly pace?: number
  /** replications of its first chunk; default 1: the work of one is not known yet */
  readonly opening?: number
  /** parts with the same number run the same line, and a thread that has built it takes them sooner; default: the part's own place */
  readonly kin?: number
}

/** events that make a chunk: some tens of milliseconds, long beside a message and short beside a second */
const CHUNK_EVENTS = 150_000
const CHUNK_MAX = 50

/**
 * Hands out chunks of about equal work: always of a part that is least far on, of those one whose line the thread knows, else the first in the list;
 * first its opening, then single replications until the work of one is known. How the work is cut and who does it changes no result.
 */
export class Schedule {
  readonly #parts: readonly Required<PartRange>[]
  readonly #next: number[]
  readonly #events: number[]
  /** thread that had the first chunk of a kin */
  readonly #homes = new Map<number, number>()

  /**
   * @param parts         how many there are
   * @param replications  of each, from 0 on; or for each part where it begins and ends
   */
  constructor(parts: number, replications: number | readonly PartRange[]) {
    const ranges = typeof replications === 'number' ? Array.from({ length: parts }, () => ({ from: 0, to: replications })) : replications
    this.#parts = ranges.map((range, index) => ({ pace: 1, kin: index, opening: 1, ...range }))
    this.#next = ranges.map(({ from }) => from)
    this.#events = ranges.map(() => 0)
  }

  /**
   * The next chunk; null when all have been handed out.
   *
   * @param thread  who asks; default 0
   * @param fixed   replications of each chunk of a part, by its place; chunks then begin at multiples of it. Default: by the work of one
   */
  next(thread = 0, fixed?: (index: number) => number): Chunk | null {
    const index = this.#choose(thread)
    if (index < 0) return null
    const { from: start, to: end, kin, opening } = this.#parts[index]!
    if (!this.#homes.has(kin)) this.#homes.set(kin, thread)
    const from = this.#next[index]!
    const events = this.#events[index]!
    const whole = fixed?.(index)
    const known = events > 0 ? Math.min(CHUNK_MAX, Math.max(1, Math.floor(CHUNK_EVENTS / events))) : from === start ? opening : 1
    const to = Math.min(end, from + (whole === undefined ? known : whole - (from % whole)))
    this.#next[index] = to
    return { index, from, to }
  }

  /** Tells how many events one replication of a part took. */
  learn(index: number, events: number): void {
    this.#events[index] = events
  }

  /** Whether each part has begun. */
  get hasOpened(): boolean {
    return this.#parts.every(({ from, to }, index) => this.#next[index]! > from || from >= to)
  }

  /** Place of the part that is least far on; −1: there is nothing left. */
  #choose(thread: number): number {
    let best = -1
    let bestAt = Number.POSITIVE_INFINITY
    let bestRank = 0
    for (const [index, { to, pace, kin }] of this.#parts.entries()) {
      const next = this.#next[index]!
      if (next >= to || next / pace > bestAt) continue
      const home = this.#homes.get(kin)
      const rank = home === thread ? 2 : home === undefined ? 1 : 0
      if (next / pace === bestAt && rank <= bestRank) continue
      best = index
      bestAt = next / pace
      bestRank = rank
    }
    return best
  }
}
