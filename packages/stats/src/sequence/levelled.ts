import { wholeShares } from './wholeShares.ts'

/**
 * The variant that lags most behind its share at the next place of a levelled order: the largest w·(k + 1) − W·(number so far); ties to the one listed first.
 *
 * @param shares  w, by variant: whole numbers ≥ 0, one above 0
 * @param sum     W, of the shares
 * @param given   how many of each variant so far
 * @param place   k, from 0: how many of all so far
 * @returns       index of a variant, never of one with share 0
 * @see Miltenburg, Level schedules for mixed-model assembly lines in just-in-time production systems (1989)
 * @example mostBehind([2, 3, 5], 10, [0, 0, 1], 1) // => 1
 */
export function mostBehind(shares: ArrayLike<number>, sum: number, given: ArrayLike<number>, place: number): number {
  let most = 0
  let mostLag = -Infinity
  for (let variant = 0; variant < shares.length; variant++) {
    const lag = shares[variant]! * (place + 1) - sum * given[variant]!
    if (lag > mostLag) {
      most = variant
      mostLag = lag
    }
  }
  return most
}

/**
 * The levelled order of a mix, one after another: at each place the variant that lags most behind its share; ties to the one listed first. The same place, the same variant in every scenario.
 *
 * No variant is ever more than one unit ahead; with five or more it may fall more than one behind, so look at largestDeviation.
 *
 * @see Miltenburg, Level schedules for mixed-model assembly lines in just-in-time production systems (1989)
 * @see Steiner & Yeomans, Level schedules for mixed-model, just-in-time processes (1993)
 */
export class LevelledOrder {
  /** units given so far, by variant */
  readonly given: Float64Array
  /** the largest distance of a count from its share so far, units */
  largestDeviation = 0
  private readonly shares: readonly number[]
  private readonly total: number
  private place = 0

  /** @throws StatisticsError E_TOO_FEW, E_DOMAIN, E_TOO_LARGE */
  constructor(weights: readonly number[]) {
    this.shares = wholeShares(weights)
    this.total = this.shares.reduce((sum, share) => sum + share, 0)
    this.given = new Float64Array(weights.length)
  }

  /** The variant of the next place, from 0. */
  next(): number {
    const most = mostBehind(this.shares, this.total, this.given, this.place)
    this.place++
    this.given[most]!++
    for (let i = 0; i < this.shares.length; i++) {
      this.largestDeviation = Math.max(this.largestDeviation, Math.abs(this.lagOf(i)) / this.total)
    }
    return most
  }

  /** whole numbers: k·wᵢ − W·xᵢ */
  private lagOf(i: number): number {
    return this.place * this.shares[i]! - this.total * this.given[i]!
  }
}

/**
 * The first n places of the levelled order.
 *
 * @example levelledOrder([2, 3, 5], 10) // => [2, 1, 0, 2, 1, 2, 2, 0, 1, 2]
 */
export function levelledOrder(weights: readonly number[], n: number): number[] {
  const order = new LevelledOrder(weights)
  return Array.from({ length: n }, () => order.next())
}
