/** What a promise is made of, simulated: shifts of the line as it stands, and with longer work while people learn. */
import { type Decision, learningFactor, type PromiseSection } from '@loopwright/decide'
import type { LineSpec } from '@loopwright/line'
import type { Scenario } from '@loopwright/scenario'
import { longerWork, type SweepResult } from '@loopwright/study'
import { forecastOf } from '../forecast/forecastOf.ts'
import type { ChosenAlternative } from './chosen.ts'
import { needsUnits, type PromiseRuns } from './promiseFigures.ts'

/** lines simulated between the standard and the first unit */
const STEPS = 4
/** windows of each of them, at most */
const LEARNING_WINDOWS = 40

/**
 * Simulates shifts of a line.
 *
 * @param factor  how many times as long all work in it is; 1: the line as it stands
 */
export type PromisedShifts = (line: LineSpec, replications: number, factor: number) => Promise<SweepResult>

/**
 * Runs the line of a promise, first as it stands.
 *
 * @param decision  with a promise
 * @param scenario  of the alternative that it names
 * @returns         what the promise is made of, and the shifts of the line as it stands
 * @throws RangeError  where nothing is made
 * @example (await promiseRunsOf({ ...runs.decision, promise: { ...promised.section, learning: null } }, { of: 1, name: 'zoned loop' }, scenario, 3, (line, replications) => sweepCarriers(line, { counts: [4], replications }, { seed: '1', workers: 0 }))).runs.slower // => []
 */
export async function promiseRunsOf(
  decision: Pick<Decision, 'promise' | 'alternatives' | 'money'>,
  { of, name }: ChosenAlternative,
  scenario: Scenario,
  replications: number,
  shifts: PromisedShifts,
): Promise<{ readonly runs: PromiseRuns; readonly sweep: SweepResult }> {
  const { line } = scenario
  const section = decision.promise!
  const sweep = await shifts(line, replications, 1)
  const { units } = sweep.counts[0]!
  needsUnits(units)
  const few = Math.min(replications, LEARNING_WINDOWS)
  const learning: PromiseRuns['slower'][number][] = []
  for (const factor of slowerFactors(section))
    learning.push(slowerPoint(factor, (await shifts(longerWork(line, factor), few, factor)).counts[0]!.units))
  const runs = {
    name,
    scenario,
    section,
    crew: decision.alternatives[of]!.crew ?? decision.money?.crew ?? null,
    forecast: forecastOf(scenario, sweep, section.daysPerWeek * section.shiftsPerDay),
    slower: learning.length === 0 ? [] : [slowerPoint(1, units), ...learning],
  }
  return { runs, sweep }
}

/** With how many times the standard work the line is simulated for the ramp-up, ascending; none where no learning is told. */
export function slowerFactors({ learning }: Pick<PromiseSection, 'learning'>): number[] {
  if (learning === null) return []
  const most = learningFactor(learning, 1)
  return Array.from({ length: STEPS }, (_, step) => 1 + ((step + 1) / STEPS) * (most - 1))
}

/** A line that was simulated with longer work, as a point of the ramp-up. */
const slowerPoint = (factor: number, units: readonly number[]): PromiseRuns['slower'][number] => ({
  factor,
  mean: units.reduce((sum, one) => sum + one, 0) / units.length,
})
