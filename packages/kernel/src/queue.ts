import { assert } from './assert.ts'

/**
 * A queue of timers: a fixed number of slots, each pending once or not at all; the earliest comes first, and of equal times the lowest slot.
 *
 * A tournament: slots play in pairs, winners against winners, so that the earliest stands at the top. Putting a timer in stops climbing where it loses, which is
 * soon; taking one out plays its rounds again. Nothing is allocated after construction.
 * The time is written into `times[slot]` by the caller, who then schedules the slot: no number crosses a call, so none is boxed.
 */
export class TimerQueue {
  /** seconds; meaning only while the slot is pending; length capacity */
  readonly times: Float64Array
  /** number of slots */
  readonly capacity: number
  /** pending slots */
  size = 0
  /** slots rounded up to a power of two: where the players stand in the tree, whose top is place 1 and whose pairs are 2n, 2n + 1 */
  private readonly leaves: number
  /** by place in the tree: time of the winner, infinite where nobody is pending */
  private readonly best: Float64Array
  /** by place in the tree: slot of the winner */
  private readonly winner: Int32Array
  private readonly backwards: boolean

  /**
   * @param capacity   number of slots, ≥ 0
   * @param backwards  of equal times the highest slot comes first: for tests that results do not depend on this order
   */
  constructor(capacity: number, backwards = false) {
    this.capacity = capacity
    this.times = new Float64Array(capacity)
    let leaves = 1
    while (leaves < capacity) leaves *= 2
    this.leaves = leaves
    this.best = new Float64Array(2 * leaves)
    this.winner = new Int32Array(2 * leaves)
    this.backwards = backwards
    this.clear()
  }

  /** Takes all timers back. */
  clear(): void {
    const { best, winner, leaves } = this
    best.fill(Number.POSITIVE_INFINITY)
    for (let slot = 0; slot < leaves; slot++) winner[leaves + slot] = this.backwards ? leaves - 1 - slot : slot
    for (let at = leaves - 1; at > 0; at--) winner[at] = winner[2 * at]!
    this.size = 0
  }

  isPending(slot: number): boolean {
    return this.best[this.leafOf(slot)]! !== Number.POSITIVE_INFINITY
  }

  /** The slot that comes first; −1 when none is pending. */
  first(): number {
    return this.size > 0 ? this.winner[1]! : -1
  }

  /** Makes `slot` pending at `times[slot]`, which the caller has written: a finite time. */
  schedule(slot: number): void {
    const { best, winner } = this
    const time = this.times[slot]!
    let at = this.leafOf(slot)
    assert(best[at] === Number.POSITIVE_INFINITY, 'a timer is scheduled that is already pending')
    this.size++
    best[at] = time
    // up to where an earlier one stands, or of equal ones one that stands further left
    while (at > 1) {
      const up = at >> 1
      if (time > best[up]! || (time === best[up] && (at & 1) === 1 && best[at - 1] === time)) return
      best[up] = time
      winner[up] = slot
      at = up
    }
  }

  /** Takes the timer back. */
  cancel(slot: number): void {
    const at = this.leafOf(slot)
    assert(this.best[at] !== Number.POSITIVE_INFINITY, 'a timer is taken back that is not pending')
    this.remove(at)
  }

  /** Takes the first slot out and returns it; −1 when none is pending. */
  pop(): number {
    if (this.size === 0) return -1
    const slot = this.winner[1]!
    this.remove(this.leafOf(slot))
    return slot
  }

  private leafOf(slot: number): number {
    return this.backwards ? 2 * this.leaves - 1 - slot : this.leaves + slot
  }

  private remove(leaf: number): void {
    const { best, winner } = this
    this.size--
    best[leaf] = Number.POSITIVE_INFINITY
    for (let at = leaf >> 1; at > 0; at >>= 1) {
      const left = 2 * at
      const wins = left + Number(best[left + 1]! < best[left]!)
      best[at] = best[wins]!
      winner[at] = winner[wins]!
    }
  }
}
