/** Learning: how much longer a unit takes the people who have made few of them. */

/**
 * Time of the n-th unit by Wright: `T_1 · n^(log2 r)`.
 *
 * @param first  time of the first unit, > 0
 * @param n      which unit, ≥ 1
 * @param rate   time left at each doubling, above 0 up to 1: about 0.80 at three quarters hand work, 0.85 at half, 0.90 at a quarter
 * @see Wright (1936); the rates: an estimating manual as quoted
 * @example wright(100, 4, 0.8) // => 64
 */
export const wright = (first: number, n: number, rate: number): number => first * n ** Math.log2(rate)

/**
 * Time of the n-th unit by De Jong: a part of the work does not get shorter. `T_1 · (M + (1 − M) · n^(log2 r))`.
 *
 * @param incompressible  M, share of the first time that nobody learns, 0 … 1; 0 is Wright
 * @see De Jong (1957), from memory
 * @example deJong(100, 4, 0.8, 0.5) // => 82
 */
export const deJong = (first: number, n: number, rate: number, incompressible: number): number =>
  first * (incompressible + (1 - incompressible) * wright(1, n, rate))

/** How people learn a line. */
export interface Learning {
  /** time left at each doubling, above 0 and below 1 */
  readonly rate: number
  /** share of the first time that does not get shorter, 0 … 1 */
  readonly incompressible: number
  /** units after which the standard times hold; from then on nothing is learned */
  readonly standardAfter: number
}

/**
 * How many times the standard time the n-th unit takes: 1 from `standardAfter` on.
 *
 * @example learningFactor({ rate: 0.8, incompressible: 0, standardAfter: 4 }, 1) // => 1.5625
 */
export function learningFactor({ rate, incompressible, standardAfter }: Learning, n: number): number {
  return n >= standardAfter ? 1 : deJong(1, n, rate, incompressible) / deJong(1, standardAfter, rate, incompressible)
}

/** One week of the ramp-up. */
export interface RampWeek {
  /** from 1 */
  readonly week: number
  /** times the standard time, mean over the units of the week */
  readonly factor: number
  /** units expected */
  readonly units: number
  /** made before it */
  readonly before: number
}

/**
 * Ramp-up week by week: each week is made at the mean factor of its own units.
 *
 * @param weekUnits  units of a week at a factor of the standard time; falls with the factor
 * @param weeks      a whole number ≥ 1
 * @example rampUp({ rate: 0.8, incompressible: 0, standardAfter: 1 }, () => 100, 2).map(({ before }) => before) // => [0, 100]
 */
export function rampUp(learning: Learning, weekUnits: (factor: number) => number, weeks: number): RampWeek[] {
  const found: RampWeek[] = []
  let before = 0
  for (let week = 1; week <= weeks; week++) {
    let factor = learningFactor(learning, before + 1)
    // what a week makes and how fast it learns hang on each other
    for (let step = 0; step < 30; step++) factor = meanFactor(learning, before, Math.max(1, weekUnits(factor)))
    const units = weekUnits(factor)
    found.push({ week, factor, units, before })
    before += units
  }
  return found
}

/** Mean over the units before + 1 … before + units, at 64 of them. */
function meanFactor(learning: Learning, before: number, units: number): number {
  const STEPS = 64
  let sum = 0
  for (let step = 0; step < STEPS; step++) sum += learningFactor(learning, before + 1 + ((step + 0.5) / STEPS) * (units - 1))
  return sum / STEPS
}

/**
 * A value between simulated points, in a straight line; beyond the ends that of the nearest two.
 *
 * @param points  at least two, ascending in x
 * @example between([[1, 330], [2, 200]], 1.5) // => 265
 */
export function between(points: readonly (readonly [x: number, y: number])[], x: number): number {
  const right = points.findIndex(([at]) => at >= x)
  const at = right < 0 ? points.length - 2 : Math.max(0, right - 1)
  const [[x0, y0], [x1, y1]] = [points[at]!, points[at + 1]!]
  return y0 + ((x - x0) / (x1 - x0)) * (y1 - y0)
}
