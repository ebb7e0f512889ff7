import { tooFew } from '../messages.ts'
import { StatisticsError } from '../statisticsError.ts'

const LARGEST = 1e6

/**
 * Shares as the smallest whole numbers that give them.
 *
 * @param weights  one or more, each above 0
 * @returns        whole numbers; the weights themselves where they are whole
 * @throws StatisticsError E_TOO_FEW, E_DOMAIN; E_TOO_LARGE above 1,000,000
 * @example wholeShares([0.2, 0.3, 0.5]) // => [2, 3, 5]
 */
export function wholeShares(weights: readonly number[]): number[] {
  if (weights.length === 0) throw tooFew('an order', 0, 'share', 1)
  const row = weights.findIndex((weight) => !(weight > 0 && weight < Infinity))
  if (row >= 0) throw new StatisticsError('E_DOMAIN', `The share ${weights[row]} in row ${row + 1} is not above 0: leave the variant out.`)
  if (weights.every((weight) => Number.isInteger(weight))) return checked([...weights], weights)
  const ratios = weights.map((weight) => fraction(weight / weights[0]!, weights))
  const common = ratios.reduce((all, [, below]) => (all / gcd(all, below)) * below, 1)
  const whole = ratios.map(([above, below]) => above * (common / below))
  const shared = whole.reduce(gcd)
  return checked(
    whole.map((value) => value / shared),
    weights,
  )
}

function checked(whole: number[], weights: readonly number[]): number[] {
  if (whole.some((value) => !(value <= LARGEST))) throw tooFine(weights)
  return whole
}

const tooFine = (weights: readonly number[]): StatisticsError =>
  new StatisticsError('E_TOO_LARGE', `The shares ${weights.join(', ')} need whole numbers above 1,000,000: round them.`)

/** the simplest fraction within rounding of x, by continued fraction */
function fraction(x: number, weights: readonly number[]): [number, number] {
  let [above, below, aboveBefore, belowBefore] = [Math.floor(x), 1, 1, 0]
  let rest = x - above
  while (Math.abs(above / below - x) > 1e-13 * x) {
    if (rest === 0 || below > 1e9) throw tooFine(weights)
    const whole = Math.floor(1 / rest)
    rest = 1 / rest - whole
    ;[above, aboveBefore] = [whole * above + aboveBefore, above]
    ;[below, belowBefore] = [whole * below + belowBefore, below]
  }
  return [above, below]
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b))
