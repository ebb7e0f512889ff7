import { formatDuration } from '@loopwright/charts/table'
import { isPlainLoop, type LineSpec, STORE } from '@loopwright/line'
import type { Scenario } from '@loopwright/scenario'

/** What the line is called, and the stretch of time that all numbers count for. */
export interface Period {
  /** "shift" or "window" */
  readonly one: string
  /** "a shift", or the length of the window: "in 8 h" */
  readonly each: string
  /** "shifts" or "windows" */
  readonly many: string
  /** units wanted in it; null: no plan */
  readonly plan: number | null
  /** "loop", "open line", or "line" where it is neither */
  readonly line: LineNoun
  /** the shift by its name, "the late shift"; null without a calendar that judges one */
  readonly named: string | null
}

/** What a line is called: a loop or a line. */
export type LineNoun = 'loop' | 'open line' | 'line'

/** Of a scenario: what its sentences need. */
export type Named = Pick<Scenario, 'calendar' | 'plan'> & { readonly line: LineSpec }

/**
 * A shift where the scenario judges one shift of a calendar, else a window.
 *
 * @example period(scenario).each // => 'a shift'
 */
export function period(scenario: Named): Period {
  const one = scenario.calendar?.shifts === 1 ? 'shift' : 'window'
  const { warmupSeconds, endSeconds } = scenario.line.window
  const each = one === 'shift' ? 'a shift' : `in ${formatDuration(endSeconds - warmupSeconds)}`
  return {
    one,
    each,
    many: `${one}s`,
    plan: scenario.plan?.unitsPerWindow ?? null,
    line: lineNoun(scenario.line),
    named: one === 'shift' ? shiftName(scenario.calendar!.judged) : null,
  }
}

/** "the second shift", "the late shift", "shift 2", "the shift of day 2" */
function shiftName(judged: string): string {
  if (/^shifts? \d/.test(judged)) return judged
  if (/^day \d+$/.test(judged)) return `the shift of ${judged}`
  return /\bshift$/.test(judged) ? `the ${judged}` : `the ${judged} shift`
}

/** One closed loop; a line with a store where paths begin and end; or a graph that is neither. */
export function lineNoun(line: LineSpec): LineNoun {
  if (isPlainLoop(line)) return 'loop'
  return line.paths.some(({ from, to }) => from === STORE || to === STORE) ? 'open line' : 'line'
}
