import type { Scenario } from '@loopwright/scenario'

/** What the stretch of time is called that all numbers count for. */
export interface Period {
  /** "shift" or "window" */
  readonly one: string
  /** "shifts" or "windows" */
  readonly many: string
  readonly plan: number | null
}

/** A shift where the scenario judges one shift of a calendar, else a window. */
export function period(scenario: Pick<Scenario, 'calendar' | 'plan'>): Period {
  const one = scenario.calendar?.shifts === 1 ? 'shift' : 'window'
  return { one, many: `${one}s`, plan: scenario.plan?.unitsPerWindow ?? null }
}
