/** The forecast of a scenario, from the runs of its line as it stands. */
import { workingSeconds } from '@loopwright/line/bounds'
import type { Scenario } from '@loopwright/scenario'
import type { SweepResult } from '@loopwright/study'
import { FEW } from '../words/planWords.ts'
import { type Forecast, forecast } from './forecast.ts'

/** A forecast, and the runs that it rests on. */
export interface ForecastResult extends Forecast {
  readonly kind: 'forecast'
  /** of the one count of the scenario */
  readonly sweep: SweepResult
}

/**
 * What may be promised, of the runs of a sweep with the line's own number of carriers.
 *
 * @param sweep          of the scenario's own number of carriers
 * @param shiftsPerWeek  shifts whose output is added up, a whole number ≥ 1
 * @throws RangeError    if the shifts per week are no whole number ≥ 1
 * @example forecastOf(scenario, await sweepCarriers(scenario.line, { counts: [4], replications: 12 }, { seed: '1', workers: 0 }), 10).kind // => 'forecast'
 */
export function forecastOf({ line, plan }: Pick<Scenario, 'line' | 'plan'>, sweep: SweepResult, shiftsPerWeek: number): ForecastResult {
  const { chance } = sweep
  const numbers = { plan: plan?.unitsPerWindow ?? null, netSeconds: workingSeconds(line), shiftsPerWeek, chance }
  return { kind: 'forecast', sweep, ...forecast(sweep.counts[0]!.units, numbers) }
}

/** Weeks are told from so many on; one window is no week. */
export const hasWeeks = ({ week, shiftsPerWeek, sweep }: Pick<ForecastResult, 'week' | 'shiftsPerWeek' | 'sweep'>): boolean =>
  shiftsPerWeek > 1 && (week.units.length >= FEW || (!sweep.chance && week.units.length > 0))
