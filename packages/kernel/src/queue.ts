import { assert } from './assert.ts'
import { Buckets, WANTED } from './buckets.ts'

/** When more timers than these stand in order, the later half of them goes to the buckets. */
const FRONT = 24
const NONE = -1

const AWAY = 0
const IN_FRONT = 1
const BEHIND = 2

/**
 * A queue of timers: a fixed number of slots, each pending once or not at all; the earliest comes first. Of equal times none has a right to come first.
 *
 * The earliest few stand in a list in order: most timers of a line are short, so that a new one finds its place in a few steps. The others wait in buckets.
 * Nothing is allocated after construction.
 * The time is written into `times[slot]` by the caller, who then schedules the slot: no number crosses a call, so none is boxed.
 */
export class TimerQueue {
  /** seconds; meaning only while the slot is pending; length capacity */
  readonly times: Float64Array
  /** number of slots */
  readonly capacity: number
  /** pending slots */
  size = 0
  /** by slot: AWAY, IN_FRONT or BEHIND */
  private readonly where: Uint8Array
  /** the latest of the front first, the earliest last; empty only if nothing is pending */
  private readonly frontTimes: Float64Array
  private readonly frontSlots: Int32Array
  private front = 0
  /** all of them later than the front */
  private readonly others: Buckets
  private readonly backwards: boolean

  /**
   * @param capacity   number of slots, ≥ 0
   * @param backwards  equal times come in another order: for tests that results do not depend on it
   */
  constructor(capacity: number, backwards = false) {
    this.capacity = capacity
    this.times = new Float64Array(capacity)
    this.where = new Uint8Array(capacity)
    this.frontTimes = new Float64Array(capacity)
    this.frontSlots = new Int32Array(capacity)
    this.others = new Buckets(this.times)
    this.backwards = backwards
  }

  /** Takes all timers back. */
  clear(): void {
    this.where.fill(AWAY)
    this.front = 0
    this.others.clear()
    this.size = 0
  }

  isPending(slot: number): boolean {
    return this.where[slot] !== AWAY
  }

  /** The slot that comes first; −1 when none is pending. */
  first(): number {
    return this.front === 0 ? NONE : this.frontSlots[this.front - 1]!
  }

  /** Its time; infinite when none is pending. */
  firstTime(): number {
    return this.front === 0 ? Number.POSITIVE_INFINITY : this.frontTimes[this.front - 1]!
  }

  /** Makes `slot` pending at `times[slot]`, which the caller has written: a finite time. */
  schedule(slot: number): void {
    assert(this.where[slot] === AWAY, 'a timer is scheduled that is already pending')
    this.size++
    if (this.others.size > 0 && this.others.takes(slot)) {
      this.where[slot] = BEHIND
      this.others.add(slot)
    } else {
      this.putInFront(slot)
      if (this.front > FRONT) this.sendBack()
    }
  }

  /** Takes the timer back. */
  cancel(slot: number): void {
    assert(this.where[slot] !== AWAY, 'a timer is taken back that is not pending')
    this.size--
    if (this.where[slot] === BEHIND) this.others.remove(slot)
    else this.takeFromFront(slot)
    this.where[slot] = AWAY
    if (this.front === 0 && this.size > 0) this.fetch()
  }

  /** Takes the first slot out and returns it; −1 when none is pending. */
  pop(): number {
    if (this.front === 0) return NONE
    const slot = this.frontSlots[--this.front]!
    this.size--
    this.where[slot] = AWAY
    if (this.front === 0 && this.size > 0) this.fetch()
    return slot
  }

  private putInFront(slot: number): void {
    const { frontTimes, frontSlots, backwards } = this
    const time = this.times[slot]!
    let at = this.front++
    while (at > 0) {
      const other = frontTimes[at - 1]!
      if (time < other || (time === other && !backwards)) break
      frontTimes[at] = other
      frontSlots[at] = frontSlots[at - 1]!
      at--
    }
    frontTimes[at] = time
    frontSlots[at] = slot
    this.where[slot] = IN_FRONT
  }

  private takeFromFront(slot: number): void {
    const { frontTimes, frontSlots } = this
    let at = 0
    while (frontSlots[at] !== slot) at++
    this.front--
    for (; at < this.front; at++) {
      frontTimes[at] = frontTimes[at + 1]!
      frontSlots[at] = frontSlots[at + 1]!
    }
  }

  /** The later half of the front goes to the others, with all whose time is the same; the earliest and those with it stay. */
  private sendBack(): void {
    const { frontTimes, frontSlots, others } = this
    const earliest = frontTimes[this.front - 1]!
    if (frontTimes[0] === earliest) return
    let half = this.front >> 1
    while (frontTimes[half] === earliest) half--
    const start = frontTimes[half]!
    others.layOutFrom(start, (this.front - half) / (WANTED * (start - earliest)))
    let kept = 0
    for (let at = 0; at < this.front; at++) {
      const slot = frontSlots[at]!
      if (frontTimes[at]! >= start) {
        this.where[slot] = BEHIND
        others.add(slot)
      } else {
        frontTimes[kept] = frontTimes[at]!
        frontSlots[kept++] = slot
      }
    }
    this.front = kept
  }

  /** The earliest of the others come to the front, which is empty. */
  private fetch(): void {
    const { nextOf } = this.others
    for (let slot = this.others.open(FRONT); slot !== NONE; ) {
      const next = nextOf[slot]!
      this.putInFront(slot)
      slot = next
    }
  }
}
