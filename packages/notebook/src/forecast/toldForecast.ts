/** A forecast as it is told: its means without the luck of their worlds, where that is known. */
import { toldCount } from '../words/controlWords.ts'
import type { Spread } from './forecast.ts'
import type { ForecastResult } from './forecastOf.ts'

/** A week is so many shifts, and its mean so many times theirs: what is known of the one is known of the other. */
export function toldForecast(of: ForecastResult, plain: boolean | undefined): ForecastResult {
  const count = toldCount(of.sweep.counts[0]!, plain)
  const { shift, week, shiftsPerWeek } = of
  if (count.controlled === null) return { ...of, sweep: { ...of.sweep, counts: [count] } }
  const scaled = (spread: Spread, scale: number): Spread => {
    const { mean, halfWidth, low, high } = count.mean!
    const told = { mean: scale * mean, halfWidth: scale * halfWidth, low: scale * low, high: scale * high }
    return { ...spread, mean: spread.mean === null ? null : { ...spread.mean, ...told } }
  }
  return { ...of, sweep: { ...of.sweep, counts: [count] }, shift: scaled(shift, 1), week: scaled(week, shiftsPerWeek) }
}
