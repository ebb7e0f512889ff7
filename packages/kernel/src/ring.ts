/** The last events before a failure: a ring of (time, kind, a, b), sized once. */
export class EventRing {
  readonly capacity: number
  /** events seen since construction */
  count = 0
  private readonly times: Float64Array
  private readonly words: Int32Array

  /** @param capacity  events kept, ≥ 1 */
  constructor(capacity: number) {
    this.capacity = capacity
    this.times = new Float64Array(capacity)
    this.words = new Int32Array(3 * capacity)
  }

  add(time: number, kind: number, a: number, b: number): void {
    const at = this.count++ % this.capacity
    this.times[at] = time
    this.words[3 * at] = kind
    this.words[3 * at + 1] = a
    this.words[3 * at + 2] = b
  }

  /** Oldest first. */
  list(): { time: number; kind: number; a: number; b: number }[] {
    const kept = Math.min(this.count, this.capacity)
    return Array.from({ length: kept }, (_, k) => {
      const at = (this.count - kept + k) % this.capacity
      return { time: this.times[at]!, kind: this.words[3 * at]!, a: this.words[3 * at + 1]!, b: this.words[3 * at + 2]! }
    })
  }
}
