/** A line as people call its parts: for tables and sentences, never for a run, whose random streams go by the names. */
import type { LineSpec } from '@loopwright/line'
import { type Scenario, titleOf } from '@loopwright/scenario'

/** The line with the titles of stops, tasks and variants in place of their names. */
export function titledLine(scenario: Scenario): LineSpec {
  const { line } = scenario
  return {
    ...line,
    breakdowns: line.breakdowns.map((source) => ({ ...source, name: titleOf(scenario, 'stop', source.name) })),
    tasks: line.tasks.map((name) => titleOf(scenario, 'task', name)),
    variants: line.variants.map((name) => titleOf(scenario, 'variant', name)),
  }
}
