import type { Distribution } from '../distributions/distribution.ts'
import type { Stream } from '../random/stream.ts'
import { needSample } from '../samples.ts'
import { StatisticsError } from '../statisticsError.ts'
import { type BootstrapTest, bootstrapTest } from './bootstrapTest.ts'
import { type DurationFit, FAMILIES, fitDuration, NO_SHIFT, type Shift } from './durationFit.ts'

/** One family: its fit, and how well it does. */
export interface DurationCandidate {
  readonly fit: DurationFit
  readonly test: BootstrapTest
  /** p of Anderson–Darling at least 0.05 */
  readonly holds: boolean
}

/** The families tried, and the one to take. */
export interface DurationChoice {
  /** in the order looked at: lognormal, gamma, Weibull; without shift, then with the given one */
  readonly candidates: readonly DurationCandidate[]
  /** null: none holds, and the values themselves are resampled */
  readonly chosen: DurationCandidate | null
  readonly distribution: Distribution
  /** none holds: look for a mixture first, are there two variants in these data? */
  readonly status: 'ok' | 'none holds'
}

const VALUES_MIN = 20
const HOLDS_FROM = 0.05
const AS_GOOD_WITHIN = 2

/**
 * Which curve to use for measured times (our own rule): of those that hold, the one with the lowest AICc, lognormal where it is within 2 of that; none holds: the values, resampled.
 *
 * Few values cannot tell these families apart; mean and cv decide the throughput.
 *
 * @param values   of one variant and one method of work, 20 or more
 * @param shift    the physically shortest time in seconds; null: not known
 * @param uniform  stream `bootstrap/<data set>`; used up by the candidates one after the other
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_FIT
 * @example chooseDuration(times, null, stream('fit', 0, 'wiring'), 19).candidates.map(({ fit }) => fit.family) // => ['lognormal', 'gamma', 'weibull']
 */
export function chooseDuration(values: readonly number[], shift: number | null, uniform: Stream, samples: number = 999): DurationChoice {
  needSample('a fit', values, 'value', 1)
  if (values.length < VALUES_MIN) {
    throw new StatisticsError(
      'E_TOO_FEW',
      `${values.length} values are too few for a fit: measure ${VALUES_MIN} or more, or use an expert's triple (PERT) and say so.`,
    )
  }
  const shifts: Shift[] = [NO_SHIFT]
  if (shift !== null && shift > 0) shifts.push({ from: 'given', seconds: shift })
  const candidates = shifts.flatMap((one) =>
    FAMILIES.map((family) => {
      const fit = fitDuration(values, family, one)
      const test = bootstrapTest(values, fit, uniform, samples)
      return { fit, test, holds: test.pAndersonDarling >= HOLDS_FROM }
    }),
  )
  const holding = candidates.filter((one) => one.holds).sort((a, b) => a.fit.aicc! - b.fit.aicc!)
  const best = holding[0]
  if (best === undefined) {
    return { candidates, chosen: null, distribution: { kind: 'empirical', values: [...values], interpolate: false }, status: 'none holds' }
  }
  const lognormal = holding.find((one) => one.fit.family === 'lognormal')
  const chosen = lognormal !== undefined && lognormal.fit.aicc! <= best.fit.aicc! + AS_GOOD_WITHIN ? lognormal : best
  return { candidates, chosen, distribution: chosen.fit.distribution, status: 'ok' }
}
