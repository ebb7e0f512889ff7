/** What a promise is made of, simulated: shifts of the line as it stands, and with longer work while people learn. */
import { type Decision, learningFactor, type PromiseSection, type ShiftSection } from '@loopwright/decide'
import type { LineSpec } from '@loopwright/line'
import type { Scenario } from '@loopwright/scenario'
import type { SweepResult } from '@loopwright/study'
import { longerWork } from '@loopwright/study/trials'
import { meanOf } from '@loopwright/stats'
import { forecastOf } from '../forecast/forecastOf.ts'
import type { ChosenAlternative } from './chosen.ts'
import { needsUnits, type PromiseRuns } from './promiseFigures.ts'
import { shiftSection } from './shiftsFigures.ts'

/** lines simulated between the standard and the first unit */
const STEPS = 4
/** windows of each of them, at most */
const LEARNING_WINDOWS = 40

/**
 * Simulates shifts of a line.
 *
 * @param factor  how many times as long people’s work in it is; 1: the line as it stands
 */
export type PromisedShifts = (line: LineSpec, replications: number, factor: number) => Promise<SweepResult>

/**
 * Runs the line of a promise, first as it stands.
 *
 * @param decision  with a promise
 * @param scenario  of the alternative that it names
 * @param shift     of shifts that differ: this one, which may make nothing; null: they are alike
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
  shift: ShiftSection | null = null,
): Promise<{ readonly runs: PromiseRuns; readonly sweep: SweepResult }> {
  const { line } = scenario
  const section = decision.promise!
  const sweep = await shifts(line, replications, 1)
  const { units } = sweep.counts[0]!
  if (shift === null) needsUnits(units)
  const few = Math.min(replications, LEARNING_WINDOWS)
  const learning: { readonly factor: number; readonly units: readonly number[] }[] = [{ factor: 1, units }]
  for (const factor of slowerFactors(section))
    learning.push({ factor, units: (await shifts(learningLine(line, factor), few, factor)).counts[0]!.units })
  // a stop leaves some without a run: then nothing is told of the weeks of learning
  const told = learning.length > 1 && learning.every((each) => each.units.length > 0)
  const own = shift === null ? section : shiftSection(section, shift)
  const runs = {
    name: shift?.name ?? name,
    scenario,
    section: own,
    crew: shift?.crew ?? decision.alternatives[of]!.crew ?? decision.money?.crew ?? null,
    forecast: forecastOf(scenario, sweep, own.daysPerWeek * own.shiftsPerDay),
    slower: told ? learning.map((each) => ({ factor: each.factor, mean: meanOf(each.units) })) : [],
  }
  return { runs, sweep }
}

/** The line while people learn: their work takes longer, that of automatic stations does not. */
const learningLine = (line: LineSpec, factor: number): LineSpec =>
  longerWork(line, new Map(line.stations.filter(({ operatorsNeeded }) => operatorsNeeded > 0).map(({ name }) => [name, factor])))

/** With how many times the standard work the line is simulated for the ramp-up, ascending; none where no learning is told. */
export function slowerFactors({ learning }: Pick<PromiseSection, 'learning'>): number[] {
  if (learning === null) return []
  const most = learningFactor(learning, 1)
  return Array.from({ length: STEPS }, (_, step) => 1 + ((step + 1) / STEPS) * (most - 1))
}
