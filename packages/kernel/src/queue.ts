import { assert } from './assert.ts'

/**
 * A queue of timers: a fixed number of slots, each pending once or not at all; the earliest comes first, and of equal times the one stored first.
 *
 * A binary heap over typed arrays that knows where each slot stands, so that a timer can be taken back or moved. Nothing is allocated after construction.
 * The time is written into `times[slot]` by the caller and the slot then scheduled: no number crosses a call, so none is boxed.
 * Not promised: that equal times come in slot order. Whoever cares sorts the slots that fall due together.
 */
export class TimerQueue {
  /** seconds; meaning only while the slot is pending; length capacity */
  readonly times: Float64Array
  /** number of slots */
  readonly capacity: number
  /** pending slots */
  size = 0
  private readonly heap: Int32Array
  /** where the slot stands in the heap; −1: not pending */
  private readonly place: Int32Array
  /** rank among equal times; length capacity */
  private readonly rank: Float64Array
  private stored = 0
  private readonly backwards: boolean

  /**
   * @param capacity   number of slots, ≥ 0
   * @param backwards  of equal times the one stored last comes first: for tests that results do not depend on the storing order
   */
  constructor(capacity: number, backwards = false) {
    this.capacity = capacity
    this.times = new Float64Array(capacity)
    this.heap = new Int32Array(capacity)
    this.place = new Int32Array(capacity).fill(-1)
    this.rank = new Float64Array(capacity)
    this.backwards = backwards
  }

  /** Takes all timers back. */
  clear(): void {
    this.place.fill(-1)
    this.size = 0
    this.stored = 0
  }

  isPending(slot: number): boolean {
    return this.place[slot]! >= 0
  }

  /** The slot that comes first; −1 when none is pending. */
  first(): number {
    return this.size > 0 ? this.heap[0]! : -1
  }

  /** Makes `slot` pending at `times[slot]`, which the caller has written. */
  schedule(slot: number): void {
    assert(this.place[slot] === -1, 'a timer is scheduled that is already pending')
    this.stored++
    this.rank[slot] = this.backwards ? -this.stored : this.stored
    this.rise(this.size++, slot)
  }

  /** Takes the timer back. */
  cancel(slot: number): void {
    const at = this.place[slot]!
    assert(at >= 0, 'a timer is taken back that is not pending')
    this.place[slot] = -1
    const last = this.heap[--this.size]!
    if (last === slot) return
    if (at > 0 && this.before(last, this.heap[(at - 1) >> 1]!)) this.rise(at, last)
    else this.sink(at, last)
  }

  /** Takes the first slot out and returns it; −1 when none is pending. */
  pop(): number {
    if (this.size === 0) return -1
    const slot = this.heap[0]!
    this.place[slot] = -1
    const last = this.heap[--this.size]!
    if (this.size > 0) this.sink(0, last)
    return slot
  }

  private before(a: number, b: number): boolean {
    const ta = this.times[a]!
    const tb = this.times[b]!
    return ta < tb || (ta === tb && this.rank[a]! < this.rank[b]!)
  }

  private rise(from: number, slot: number): void {
    const { heap, place } = this
    let at = from
    while (at > 0) {
      const up = (at - 1) >> 1
      const other = heap[up]!
      if (!this.before(slot, other)) break
      heap[at] = other
      place[other] = at
      at = up
    }
    heap[at] = slot
    place[slot] = at
  }

  private sink(from: number, slot: number): void {
    const { heap, place, size } = this
    let at = from
    for (;;) {
      let child = 2 * at + 1
      if (child >= size) break
      if (child + 1 < size && this.before(heap[child + 1]!, heap[child]!)) child++
      const other = heap[child]!
      if (!this.before(other, slot)) break
      heap[at] = other
      place[other] = at
      at = child
    }
    heap[at] = slot
    place[slot] = at
  }
}
