/**
 * The variant that lags most behind its share at the next place of a levelled order: the largest w·(k + 1) − W·(number so far); ties to the one listed first.
 *
 * @param shares  w, by variant: whole numbers ≥ 0, one above 0
 * @param sum     W, of the shares
 * @param given   how many of each variant so far
 * @param place   k, from 0: how many of all so far
 * @returns       index of a variant, never of one with share 0; no variant gets more than one unit ahead, and with five or more one may fall more than one behind
 * @see Miltenburg, Level schedules for mixed-model assembly lines in just-in-time production systems (1989)
 * @see Steiner & Yeomans, Level schedules for mixed-model, just-in-time processes (1993)
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
