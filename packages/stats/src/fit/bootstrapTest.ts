import { notACount } from '../messages.ts'
import type { Stream } from '../random/stream.ts'
import { StatisticsError } from '../statisticsError.ts'
import { type DurationFit, fitCurve, rulesOf, type Shift } from './durationFit.ts'
import { type Goodness, goodness } from './goodness.ts'

/** How often a sample from the fitted curve lies as far from its own fit as the data do. */
export interface BootstrapTest {
  readonly samples: number
  readonly goodness: Goodness
  /** samples at least as far away, failed refits among them */
  readonly exceedAndersonDarling: number
  readonly exceedLargestDifference: number
  /** (1 + exceed)/(samples + 1) */
  readonly pAndersonDarling: number
  readonly pLargestDifference: number
  /** samples that could not be refitted; they count as farther away */
  readonly failedRefits: number
}

/**
 * Parametric bootstrap of the fit: draw as many values from the fitted curve, refit in the same way (a given shift kept, an estimated one estimated anew), measure again.
 *
 * A table for a fully known curve would be far too kind, for this curve was chosen to lie near the data.
 *
 * @param values   the data of the fit
 * @param uniform  stream `bootstrap/<data set>`
 * @param samples  whole number from 19; 999 is usual
 * @throws StatisticsError E_DOMAIN
 * @see Stute, González Manteiga & Presedo Quindimil, Bootstrap based goodness-of-fit tests (1993)
 * @example bootstrapTest(times, fitDuration(times, 'lognormal'), stream('fit', 0, 'wiring'), 99).pAndersonDarling > 0.05 // => true
 */
export function bootstrapTest(values: readonly number[], fit: DurationFit, uniform: Stream, samples: number = 999): BootstrapTest {
  if (!(Number.isInteger(samples) && samples >= 19)) throw notACount('The number of samples', samples, 19)
  const own = goodness(values, fit)
  const quantile = rulesOf(fit.family).quantiles(fit.parameters)
  const shift: Shift = fit.shiftFrom === 'data' ? { from: 'data' } : { from: 'given', seconds: fit.shift }
  let exceedAndersonDarling = 0
  let exceedLargestDifference = 0
  let failedRefits = 0
  for (let b = 0; b < samples; b++) {
    const sample = values.map(() => fit.shift + quantile(uniform()))
    const again = refit(sample, fit, shift)
    if (again === null) failedRefits++
    const farther = (mine: number | null, its: number | null | undefined): boolean => its == null || (mine !== null && its >= mine)
    if (farther(own.andersonDarling, again?.andersonDarling)) exceedAndersonDarling++
    if (farther(own.largestDifference, again?.largestDifference)) exceedLargestDifference++
  }
  return {
    samples,
    goodness: own,
    exceedAndersonDarling,
    exceedLargestDifference,
    pAndersonDarling: own.andersonDarling === null ? 1 / (samples + 1) : (1 + exceedAndersonDarling) / (samples + 1),
    pLargestDifference: (1 + exceedLargestDifference) / (samples + 1),
    failedRefits,
  }
}

function refit(sample: readonly number[], fit: DurationFit, shift: Shift): Goodness | null {
  try {
    return goodness(sample, fitCurve(sample, fit.family, shift))
  } catch (error) {
    if (error instanceof StatisticsError) return null
    throw error
  }
}
