/** What the commands of decisions share: the alternatives are run in the same worlds, then told. */
import type { Tale } from '@loopwright/notebook'
import { type DecisionRuns, statesWalks } from '@loopwright/notebook/decision'
import { runAlternatives } from '@loopwright/study/compare'
import { openStore, tellStore } from './keptRuns.ts'
import { loadDecision } from './loadDecision.ts'
import { progress } from './shell/progress.ts'
import { asMisuse, refusals, type Shell, Stopped } from './shell/shell.ts'
import { refused, type StudyFlags } from './studyCommand.ts'
import { tell } from './output/tell.ts'
import { threadsOf } from './threads.ts'
import { checkOutputs } from './output/writeTables.ts'

export interface DecisionWork {
  /** what is being decided, for the progress */
  readonly what: string
  /** throws what is missing for the question, before anything runs. Default: nothing is needed */
  readonly needs?: (of: Pick<DecisionRuns, 'decision' | 'scenarios' | 'file'>) => void
  readonly document: (runs: DecisionRuns) => object
  readonly tale: (runs: DecisionRuns) => Tale
}

/**
 * Runs the alternatives of a decision file and tells what comes of it.
 *
 * @returns the exit code
 * @throws Misuse  with all problems of the files, or with what is missing for the question
 */
export async function decisionCommand(shell: Shell, file: string, flags: StudyFlags, command: string, work: DecisionWork): Promise<number> {
  const { replications, seed } = flags
  const { decision, loaded } = await loadDecision(shell, file)
  await checkOutputs(shell, flags)
  const scenarios = loaded.map(({ scenario }) => scenario)
  refusals(() => work.needs?.({ decision, scenarios, file }))
  const lines = loaded.map(({ scenario }, index) => ({
    name: decision.alternatives[index]!.name,
    line: scenario.line,
    plan: scenario.plan?.unitsPerWindow ?? null,
  }))
  const told = progress(
    shell,
    `${work.what}, ${lines.length} alternatives, ${replications} replications each, seed ${seed}`,
    lines.length * replications,
  )
  const store = await openStore(shell, flags)
  const options = { seed, signal: shell.signal, onProgress: told.onProgress, store, ...threadsOf(flags, shell) }
  const result = await refused(shell, () => runAlternatives(lines, { replications, cycles: statesWalks(decision) }, options))
  told.end(result.partial)
  tellStore(shell, store)
  const runs: DecisionRuns = { decision, file, scenarios, result }
  if (result.partial && result.comparison.lines[0]!.units.length < 2)
    throw new Stopped('stopped before two shifts were simulated: nothing to tell')
  const { scenario, file: scenarioFile } = loaded[decision.today]!
  try {
    return await tell(shell, flags, {
      partial: result.partial,
      document: () => work.document(runs),
      tale: ({ period, simulatedCell, simulatedWords }) => {
        const { question, cells } = work.tale(runs)
        const what = simulatedWords(result.comparison, period(scenario))
        return { question, cells: [...cells, simulatedCell('simulated', scenario, scenarioFile, result.comparison, what)] }
      },
      name: scenario.name,
      command,
    })
  } catch (error) {
    throw asMisuse(error)
  }
}
