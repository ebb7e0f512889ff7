/** Whether something goes wrong more often than is promised, by as few trials as show it. */

export interface Rates {
  /** share of the trials that may go wrong, 0 … 1 */
  readonly promised: number
  /** share that must be found, above the promised one */
  readonly found: number
  /** chance that a rate as promised, or a lower one, counts as too high */
  readonly falseAlarm: number
  /** chance that a rate to be found, or a higher one, counts as kept */
  readonly missed: number
}

/**
 * Tries until the likelihoods of the two rates are far enough apart; Ville's inequality makes both chances hold without an approximation.
 *
 * @see A. Wald, Sequential tests of statistical hypotheses, Annals of Mathematical Statistics 16 (1945)
 * @param isWrong  of a trial by its number, 0, 1, …; trials are independent
 * @example await tooOften(async () => true, { promised: 0.05, found: 0.2, falseAlarm: 1e-6, missed: 0.01 }) // => true
 */
export async function tooOften(
  isWrong: (trial: number) => Promise<boolean>,
  { promised, found, falseAlarm, missed }: Rates,
): Promise<boolean> {
  const wrong = Math.log(found / promised)
  const right = Math.log((1 - found) / (1 - promised))
  let ratio = 0
  for (let trial = 0; ; trial += 1) {
    ratio += (await isWrong(trial)) ? wrong : right
    if (ratio >= -Math.log(falseAlarm)) return true
    if (ratio <= Math.log(missed)) return false
  }
}
