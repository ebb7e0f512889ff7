/** The time average of a count that goes up and down. */
export class Level {
  count = 0
  /** 0: the integral of the count over time, 1: instant up to which it stands; numbers in a place of their own are never boxed */
  private readonly sums = new Float64Array(2)

  /** From `now` on the integral starts at 0; the count stays. */
  restart(now: number): void {
    this.sums[0] = 0
    this.sums[1] = now
  }

  change(now: number, by: number): void {
    this.settle(now)
    this.count += by
  }

  /** Mean over the seconds up to `now`, which began at the last restart. */
  mean(now: number, seconds: number): number {
    this.settle(now)
    return this.sums[0]! / seconds
  }

  private settle(now: number): void {
    this.sums[0]! += this.count * (now - this.sums[1]!)
    this.sums[1] = now
  }
}
