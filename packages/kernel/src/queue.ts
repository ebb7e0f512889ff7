import { assert } from './assert.ts'

/** children of a place in the heap: four stand beside each other in memory, and the heap is half as deep as with two */
const FAN = 4

/**
 * A queue of timers: a fixed number of slots, each pending once or not at all; the earliest comes first, and of equal times the one stored first.
 *
 * A heap over typed arrays that knows where each slot stands, so that a timer can be taken back. Nothing is allocated after construction.
 * The time is written into `times[slot]` by the caller, who then schedules the slot and leaves its time alone while it is pending: no number crosses a call, so none is boxed.
 * Not promised: that equal times come in slot order. Whoever cares sorts the slots that fall due together.
 */
export class TimerQueue {
  /** seconds; meaning only while the slot is pending; length capacity */
  readonly times: Float64Array
  /** number of slots */
  readonly capacity: number
  /** pending slots */
  size = 0
  /** slots by place in the heap, and their times beside them */
  private readonly heap: Int32Array
  private readonly heapTimes: Float64Array
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
    this.heapTimes = new Float64Array(capacity)
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
    if (at > 0 && this.isBefore(last, (at - 1) >> 2)) this.rise(at, last)
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

  /** Whether the slot comes before the one at that place of the heap. */
  private isBefore(slot: number, at: number): boolean {
    const time = this.times[slot]!
    const other = this.heapTimes[at]!
    return time < other || (time === other && this.rank[slot]! < this.rank[this.heap[at]!]!)
  }

  private rise(from: number, slot: number): void {
    const { heap, heapTimes, place } = this
    let at = from
    while (at > 0) {
      const up = (at - 1) >> 2
      if (!this.isBefore(slot, up)) break
      const other = heap[up]!
      heap[at] = other
      heapTimes[at] = heapTimes[up]!
      place[other] = at
      at = up
    }
    heap[at] = slot
    heapTimes[at] = this.times[slot]!
    place[slot] = at
  }

  private sink(from: number, slot: number): void {
    const { heap, heapTimes, place, rank, size } = this
    let at = from
    for (;;) {
      const first = FAN * at + 1
      if (first >= size) break
      const end = first + FAN < size ? first + FAN : size
      let best = first
      for (let child = first + 1; child < end; child++) {
        const ahead = heapTimes[child]! - heapTimes[best]!
        if (ahead < 0 || (ahead === 0 && rank[heap[child]!]! < rank[heap[best]!]!)) best = child
      }
      if (this.isBefore(slot, best)) break
      const other = heap[best]!
      heap[at] = other
      heapTimes[at] = heapTimes[best]!
      place[other] = at
      at = best
    }
    heap[at] = slot
    heapTimes[at] = this.times[slot]!
    place[slot] = at
  }
}
