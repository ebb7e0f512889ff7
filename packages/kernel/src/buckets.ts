const NONE = -1
/** timers that a bucket is to hold */
export const WANTED = 8

/**
 * Timers of a later time, in buckets of equal width by time, in no order within one; what lies past the last bucket waits in one of its own until all others are
 * empty. Putting in and taking out take a few steps, however many there are.
 * (A ladder queue with one rung: W. T. Tang, R. S. M. Goh, I. L.-J. Thng, Ladder queue: an O(1) priority queue structure for large-scale discrete event simulation,
 * ACM Transactions on Modeling and Computer Simulation 15 (2005) 175-204.)
 */
export class Buckets {
  /** seconds, by slot; of the slots that are in */
  readonly times: Float64Array
  size = 0
  /** by slot: the next one in its bucket; NONE */
  readonly nextOf: Int32Array
  /** buckets, and behind them the one for what is later */
  private readonly count: number
  private readonly heads: Int32Array
  /** instant at which bucket 0 begins, seconds, and buckets a second */
  private start = -0.5
  private rate = 0.5
  /** the first bucket that has not been opened; all slots are in it or in later ones */
  private current = 0
  /** slots taken out by `open` since the buckets were laid out */
  private opened = 0

  /** @param times  by slot */
  constructor(times: Float64Array) {
    this.times = times
    const capacity = times.length
    this.nextOf = new Int32Array(capacity)
    let count = 64
    while (2 * count < capacity) count *= 2
    this.count = count
    this.heads = new Int32Array(count + 1).fill(NONE)
  }

  /** Takes all out. */
  clear(): void {
    this.heads.fill(NONE)
    this.size = 0
  }

  /** Whether the slot belongs in a bucket that has not been opened, at its time. */
  takes(slot: number): boolean {
    return (this.times[slot]! - this.start) * this.rate >= this.current
  }

  /** Puts a slot in that belongs here. */
  add(slot: number): void {
    const { heads } = this
    const bucket = this.bucketOf(slot)
    this.size++
    this.nextOf[slot] = heads[bucket]!
    heads[bucket] = slot
  }

  /** Takes out a slot that is in, at the time with which it was put in. */
  remove(slot: number): void {
    const { heads, nextOf } = this
    const bucket = this.bucketOf(slot)
    this.size--
    let before = heads[bucket]!
    if (before === slot) {
      heads[bucket] = nextOf[slot]!
      return
    }
    while (nextOf[before] !== slot) before = nextOf[before]!
    nextOf[before] = nextOf[slot]!
  }

  private bucketOf(slot: number): number {
    const place = (this.times[slot]! - this.start) * this.rate
    return place < this.count ? Math.floor(place) : this.count
  }

  /**
   * Takes the slots of the earliest bucket out: the first of them, the others by `nextOf`. All that is left is later. Not to be called when nothing is in.
   *
   * @param most  of more than so many, where their times differ, the buckets are made narrower
   */
  open(most: number): number {
    const { heads, nextOf, times } = this
    for (;;) {
      while (this.current < this.count && heads[this.current] === NONE) this.current++
      if (this.current === this.count) {
        const held = this.opened / this.count
        this.layOut(this.rate * Math.min(4, Math.max(0.5, held / WANTED)))
        continue
      }
      const first = heads[this.current]!
      let count = 0
      let least = Number.POSITIVE_INFINITY
      let greatest = 0
      for (let slot = first; slot !== NONE; slot = nextOf[slot]!) {
        const time = times[slot]!
        if (time < least) least = time
        if (time > greatest) greatest = time
        count++
      }
      if (count > most && greatest > least) {
        this.layOut(count / (WANTED * (greatest - least)))
        continue
      }
      heads[this.current++] = NONE
      this.size -= count
      this.opened += count
      return first
    }
  }

  /** Lays the buckets out anew, from the earliest slot on. */
  private layOut(rate: number): void {
    const { heads, nextOf, times } = this
    let least = Number.POSITIVE_INFINITY
    for (let bucket = this.current; bucket <= this.count; bucket++) {
      for (let slot = heads[bucket]!; slot !== NONE; slot = nextOf[slot]!) if (times[slot]! < least) least = times[slot]!
    }
    this.layOutFrom(least, rate)
  }

  /**
   * Lays the buckets out anew.
   *
   * @param start  seconds; none of the slots that are in is earlier
   * @param rate   buckets a second, > 0
   */
  layOutFrom(start: number, rate: number): void {
    const { heads, nextOf } = this
    let all = NONE
    for (let bucket = this.current; bucket <= this.count; bucket++) {
      for (let slot = heads[bucket]!; slot !== NONE; ) {
        const next = nextOf[slot]!
        nextOf[slot] = all
        all = slot
        slot = next
      }
      heads[bucket] = NONE
    }
    this.start = start
    this.rate = rate
    this.current = 0
    this.opened = 0
    this.size = 0
    while (all !== NONE) {
      const next = nextOf[all]!
      this.add(all)
      all = next
    }
  }
}
