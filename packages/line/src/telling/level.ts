/** place in `sums` of the instant of the next change */
export const CHANGE_AT = 2

/** The time average of a count that goes up and down. */
export class Level {
  count = 0
  /** 0: the integral of the count over time, 1: instant up to which it stands, CHANGE_AT; numbers in a place of their own are never boxed */
  readonly sums = new Float64Array(3)

  /** From `now` on the integral starts at 0; the count stays. */
  restart(now: number): void {
    this.sums[0] = 0
    this.sums[1] = now
    this.sums[CHANGE_AT] = now
  }

  /** The count changes at the instant at CHANGE_AT. */
  change(by: number): void {
    this.settle()
    this.count += by
  }

  /** Mean over the seconds up to `now`, which began at the last restart. */
  mean(now: number, seconds: number): number {
    this.sums[CHANGE_AT] = now
    this.settle()
    return this.sums[0]! / seconds
  }

  private settle(): void {
    const { sums } = this
    sums[0]! += this.count * (sums[CHANGE_AT]! - sums[1]!)
    sums[1] = sums[CHANGE_AT]!
  }
}
