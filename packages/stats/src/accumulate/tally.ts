/**
 * Count, mean, spread and range of a growing sample, by Welford's update; two tallies merge exactly as if one had seen all.
 *
 * Merge in a fixed order (replication 0, 1, 2, …), so that one worker and eight give the same bits.
 *
 * @see Welford, Note on a method for calculating corrected sums of squares and products (1962)
 * @see Chan, Golub & LeVeque, Algorithms for computing the sample variance (1983)
 * @example (t => { t.add(1); t.add(3); return t.variance })(new Tally()) // => 2
 */
export class Tally {
  count = 0
  private centre = 0
  private squares = 0
  private least = Infinity
  private most = -Infinity

  /** A tally of a list. */
  static of(values: readonly number[]): Tally {
    const tally = new Tally()
    for (const value of values) tally.add(value)
    return tally
  }

  add(value: number): void {
    this.count++
    const distance = value - this.centre
    this.centre += distance / this.count
    this.squares += distance * (value - this.centre)
    if (value < this.least) this.least = value
    if (value > this.most) this.most = value
  }

  /** Takes in all that the other has seen. */
  merge(other: Tally): void {
    if (other.count === 0) return
    const count = this.count + other.count
    const distance = other.centre - this.centre
    this.centre += (distance * other.count) / count
    this.squares += other.squares + (distance * distance * this.count * other.count) / count
    this.count = count
    if (other.least < this.least) this.least = other.least
    if (other.most > this.most) this.most = other.most
  }

  /** undefined while there is no value */
  get mean(): number | undefined {
    return this.count === 0 ? undefined : this.centre
  }

  /** divisor n − 1; undefined below two values */
  get variance(): number | undefined {
    return this.count < 2 ? undefined : this.squares / (this.count - 1)
  }

  /** divisor n − 1; undefined below two values */
  get sd(): number | undefined {
    return this.count < 2 ? undefined : Math.sqrt(this.squares / (this.count - 1))
  }

  get min(): number | undefined {
    return this.count === 0 ? undefined : this.least
  }

  get max(): number | undefined {
    return this.count === 0 ? undefined : this.most
  }
}
