/** A decision file in a notebook: its alternatives run in the same worlds, and what comes of it as stories. */
import { dirname, join } from 'node:path'
import { type Decision, readDecision } from '@loopwright/decide'
import { TRIALS_LEAST } from '@loopwright/decide/acceptance'
import type { LineSpec } from '@loopwright/line'
import { applyVariation, formatProblems, readScenario, readScenarioWith, type Scenario } from '@loopwright/scenario'
import { sweepCarriers, type SweepResult } from '@loopwright/study'
import { recalibrate, runTrials } from '@loopwright/study/trials'
import { runAlternatives } from '@loopwright/study/compare'
import type { RunCell } from '../cells/cell.ts'
import { Mistake } from '../load/fault.ts'
import { besideOrHere } from '../runner/besideOrHere.ts'
import { checkNames, withKnownNames } from '../runner/knownNames.ts'
import { type Simulated, simulatedCell } from '../study/simulatedCell.ts'
import { simulatedWords } from '../study/simulatedWords.ts'
import { progressOf, REPLICATIONS, type recalling, type StudyParts, type StudyRequest, studyOptions } from '../study/studyContext.ts'
import { period } from '../sweep/period.ts'
import { acceptanceOf, type AcceptanceResult, type AcceptanceStory, acceptanceStory } from './acceptanceStory.ts'
import { type ChosenAlternative, chosenAlternative, needsShift } from './chosen.ts'
import { type CriteriaStory, criteriaStory } from './criteriaStory.ts'
import type { DecisionRuns } from './decisionRuns.ts'
import { type CountedReality, followUpOf } from './followUpRuns.ts'
import { type FollowUpStory, followUpStory } from './followUpStory.ts'
import { type PaybackStory, paybackStory } from './paybackStory.ts'
import { promiseRunsOf } from './promiseRuns.ts'
import { type PromiseStory, promiseStory } from './promiseStory.ts'
import { statesWalks } from './walked.ts'
import { type ScreeningStory, screeningStory } from './screeningStory.ts'
import type { PromiseRuns } from './promiseFigures.ts'
import { shiftChanges, shiftSeed } from './shiftsFigures.ts'
import { type ShiftsStory, shiftsStory } from './shiftsStory.ts'
import { trialOf, type TrialStory, trialStory } from './trialStory.ts'

/** A decision, read and simulated; each story by its command's name. What simulates more adds a cell that says so. */
export interface NotebookDecision {
  /** as the file says it */
  readonly decision: Decision
  /** in the order of the alternatives */
  readonly scenarios: readonly Scenario[]
  /** What each alternative is worth against today. @throws RangeError  without money, plan or shifts */
  payback(): PaybackStory
  /** Which one the criteria favour. @throws RangeError  where the file has none, or a figure is missing */
  criteria(): CriteriaStory
  /** What needs a closer look before it is built. @throws RangeError  where the file has no screening */
  screen(): ScreeningStory
  /** What may be promised of the alternative that the file names. */
  promise(request?: StudyRequest): Promise<PromiseStory>
  /** The same where the file names shifts that differ. @throws RangeError  where it names none */
  promiseOfShifts(request?: StudyRequest): Promise<ShiftsStory>
  /** What it has to make in its trial. Of trials at least 40 are simulated. */
  acceptance(request?: StudyRequest): Promise<AcceptanceStory>
  /** How a trial stands after its counts so far. */
  trial(counts: readonly number[], request?: StudyRequest): Promise<TrialStory>
  /** Whether the promise still stands after the weeks that were counted. */
  followUp(counted: Pick<CountedReality, 'weeks'> & Partial<CountedReality>, request?: StudyRequest): Promise<FollowUpStory>
}

/** What a decision needs of its notebook. */
export interface DecisionParts extends Pick<StudyParts, 'effects' | 'replications' | 'seed' | 'workers' | 'long'> {
  readonly notebookFile: string
}

const REQUEST = ['replications', 'seed']
/** windows of each step of the search for a factor */
const STEP_WINDOWS = 30

/** @throws Mistake  with all problems of the files, each with its place and remedy */
export async function notebookDecision(
  parts: DecisionParts,
  show: (cell: RunCell) => void,
  recalled: ReturnType<typeof recalling>,
  path: string,
  request: StudyRequest,
): Promise<NotebookDecision> {
  checkNames('decision', request, REQUEST)
  const { file, text } = await besideOrHere(parts.notebookFile, path, parts.effects)
  const { decision, problems } = readDecision(text)
  if (decision === null) throw new Mistake(formatProblems(problems, text, file), '', path)
  const scenarios: Scenario[] = []
  for (const alternative of decision.alternatives) scenarios.push(await scenarioOf(parts, file, decision, alternative.source, path))
  const windows = (asked: StudyRequest): number => parts.replications ?? asked.replications ?? request.replications ?? REPLICATIONS
  const options = (asked: StudyRequest, what: string) => ({
    ...studyOptions(parts, { ...request, ...asked }),
    onProgress: progressOf(parts.effects, what),
  })
  const ids = new Map<string, number>()
  const told = (name: string, of: number, simulated: Simulated, what: string, lines: 'one' | 'several'): void => {
    const times = (ids.get(name) ?? 0) + 1
    ids.set(name, times)
    const source = decision.alternatives[of]!.source
    const scenarioFile = join(dirname(file), source.kind === 'file' ? source.file : decision.scenario)
    show(simulatedCell(`${name}${times === 1 ? '' : `-${times}`}-simulated`, scenarios[of]!, scenarioFile, simulated, what, lines))
  }
  const lines = scenarios.map(({ line, plan }, index) => ({
    name: decision.alternatives[index]!.name,
    line,
    plan: plan?.unitsPerWindow ?? null,
  }))
  const cycles = statesWalks(decision)
  const result = await recalled('decision', request, cycles ? [lines, 'cycles'] : [lines], () =>
    runAlternatives(lines, { replications: windows({}), cycles }, options({}, `${lines.length} alternatives`)),
  )
  const runs: DecisionRuns = { decision, file, scenarios, result }
  const { today } = decision
  told('decision', today, result.comparison, simulatedWords(result.comparison, period(scenarios[today]!)), 'several')

  const chosen = (section: 'promise' | 'acceptance'): ChosenAlternative & { readonly scenario: Scenario } => {
    const found = chosenAlternative(decision, section, file)
    return { ...found, scenario: scenarios[found.of]! }
  }
  const shifts = async (scenario: Scenario, line: LineSpec, replications: number, asked: StudyRequest): Promise<SweepResult> =>
    await recalled('decision shifts', { ...asked, replications }, [line], () =>
      sweepCarriers(
        line,
        { counts: [line.carriers.count], replications, plan: scenario.plan?.unitsPerWindow ?? null },
        { ...studyOptions(parts, { ...request, ...asked }) },
      ),
    )
  interface Trials {
    readonly name: string
    readonly scenario: Scenario
    readonly result: AcceptanceResult
  }
  const simulateTrials = async (asked: StudyRequest): Promise<Trials> => {
    const { of, name, scenario } = chosen('acceptance')
    const { seconds, lookSeconds, longer } = decision.acceptance!
    const replications = Math.max(TRIALS_LEAST, windows(asked))
    const trials = await recalled('decision trials', { ...asked, replications }, [scenario.line, decision.acceptance], () =>
      runTrials(scenario.line, { seconds, lookSeconds, longer, replications }, options(asked, `trials of “${name}”`)),
    )
    told('acceptance', of, trials, 'The line and the same line slower, in the same trials', 'several')
    return { name, scenario, result: acceptanceOf(decision.acceptance!, trials) }
  }
  /** by what was asked: a trial is judged by the trials that its acceptance rests on */
  const known = new Map<string, Promise<Trials>>()
  const trialsOf = async (asked: StudyRequest): Promise<Trials> => {
    checkNames('acceptance', asked, REQUEST)
    const key = JSON.stringify([windows(asked), asked.seed ?? null])
    const found = known.get(key) ?? simulateTrials(asked)
    known.set(key, found)
    return await found
  }

  return withKnownNames('a decision', {
    decision,
    scenarios,
    payback: () => paybackStory(runs),
    criteria: () => criteriaStory(runs),
    screen: () => screeningStory(runs),
    promise: async (asked = {}) => {
      checkNames('promise', asked, REQUEST)
      const { of, scenario, ...named } = chosen('promise')
      if (decision.promise!.shifts !== null)
        throw new RangeError(`the shifts of ${file} differ: ask "promiseOfShifts()", which tells each of them and adds up days and weeks`)
      needsShift(scenario, 'a promise is')
      const found = await promiseRunsOf(decision, { of, ...named }, scenario, windows(asked), (line, replications) =>
        shifts(scenario, line, replications, asked),
      )
      told('promise', of, found.sweep, 'The line as it stands', 'one')
      return promiseStory(found.runs)
    },
    promiseOfShifts: async (asked = {}) => {
      checkNames('promiseOfShifts', asked, REQUEST)
      const { of, name } = chosen('promise')
      const section = decision.promise!
      if (section.shifts === null) throw new RangeError(`the shifts of ${file} are alike: ask "promise()"`)
      const { source } = decision.alternatives[of]!
      const { seed } = studyOptions(parts, { ...request, ...asked })
      const each: PromiseRuns[] = []
      for (const [index, shift] of section.shifts.entries()) {
        const scenario = await scenarioOf(parts, file, decision, source, path, shiftChanges(source, shift))
        needsShift(scenario, 'a promise is')
        const own = { ...asked, seed: shiftSeed(seed, index) }
        const simulate = (line: LineSpec, replications: number): Promise<SweepResult> => shifts(scenario, line, replications, own)
        const found = await promiseRunsOf(decision, { of, name }, scenario, windows(asked), simulate, shift)
        told('promise', of, found.sweep, `The line of the ${shift.name} shift`, 'one')
        each.push(found.runs)
      }
      return shiftsStory({ name, section, shifts: each })
    },
    acceptance: async (asked = {}) => {
      const { name, scenario, result: accepted } = await trialsOf(asked)
      return acceptanceStory(scenario, name, decision.acceptance!, accepted)
    },
    trial: async (counts, asked = {}) => {
      const { name, result: accepted } = await trialsOf(asked)
      return trialStory(name, trialOf(counts, accepted))
    },
    followUp: async (counted, asked = {}) => {
      checkNames('a follow-up', counted, ['weeks', 'stations', 'stops', 'waits'])
      checkNames('a follow-up', asked, REQUEST)
      const { of, name, scenario } = chosen('promise')
      needsShift(scenario, 'weeks are counted')
      const sweep = await shifts(scenario, scenario.line, windows(asked), asked)
      told('followup', of, sweep, 'The line of the forecast', 'one')
      const own = studyOptions(parts, { ...request, ...asked })
      const found = await followUpOf(name, scenario, sweep.counts[0]!, { stations: null, stops: null, waits: [], ...counted }, own.seed, {
        simulate: async (line) => (await shifts(scenario, line, windows(asked), asked)).counts[0]!.units,
        recalibrate: async (line, units) => await recalibrate(line, { units, replications: STEP_WINDOWS }, own),
      })
      return followUpStory(found.runs)
    },
  } satisfies NotebookDecision)
}

async function scenarioOf(
  { effects }: DecisionParts,
  decisionFile: string,
  decision: Decision,
  source: Decision['alternatives'][number]['source'],
  path: string,
  { variation, changes }: ReturnType<typeof shiftChanges> = shiftChanges(source, null),
): Promise<Scenario> {
  const named = source.kind === 'file' ? source.file : decision.scenario
  const file = join(dirname(decisionFile), named)
  const text = effects.readBeside?.(decisionFile, named) ?? (await effects.readFile(file))
  const files = (beside: string): string | null => effects.readBeside?.(file, beside) ?? null
  const varied = variation === null ? { text, problems: [] } : applyVariation(text, variation)
  if (varied.text === null) throw new Mistake(formatProblems(varied.problems, text, file), '', path)
  const { scenario, problems } =
    Object.keys(changes).length === 0 ? readScenario(varied.text, { files }) : readScenarioWith(varied.text, changes, { files })
  if (scenario === null) throw new Mistake(formatProblems(problems, text, file), '', path)
  return scenario
}
