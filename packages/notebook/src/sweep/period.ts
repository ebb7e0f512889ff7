import { formatDuration } from '@loopwright/charts'
import type { LineSpec } from '@loopwright/line'
import type { Scenario } from '@loopwright/scenario'

/** What the stretch of time is called that all numbers count for. */
export interface Period {
  /** "shift" or "window" */
  readonly one: string
  /** "a shift", or the length of the window: "in 8 h" */
  readonly each: string
  /** "shifts" or "windows" */
  readonly many: string
  readonly plan: number | null
}

/** A shift where the scenario judges one shift of a calendar, else a window. */
export function period(scenario: Pick<Scenario, 'calendar' | 'plan'> & { readonly line: Pick<LineSpec, 'window'> }): Period {
  const one = scenario.calendar?.shifts === 1 ? 'shift' : 'window'
  const { warmupSeconds, endSeconds } = scenario.line.window
  const each = one === 'shift' ? 'a shift' : `in ${formatDuration(endSeconds - warmupSeconds)}`
  return { one, each, many: `${one}s`, plan: scenario.plan?.unitsPerWindow ?? null }
}
