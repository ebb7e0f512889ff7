import type { Tale } from '@loopwright/notebook'
import { type AcceptanceResult, acceptanceStory, trialOf, trialStory } from '@loopwright/notebook/decision'
import { acceptanceDocument, trialDocument } from '../../documents/decision/acceptanceDocument.ts'
import type { Loaded } from '../../loadScenario.ts'
import { acceptanceRuns } from '../../meetingRuns.ts'
import { type Notebook, tell } from '../../output/tell.ts'
import { checkOutputs } from '../../output/writeTables.ts'
import { refusals, type Shell } from '../../shell/shell.ts'
import type { StudyFlags } from '../../studyCommand.ts'

/** What a line has to make in its trial, and how the trial is judged. */
export async function acceptance(shell: Shell, file: string, flags: StudyFlags, command: string): Promise<number> {
  await checkOutputs(shell, flags)
  const { loaded, name, source, result } = await acceptanceRuns(shell, file, flags)
  return await tell(shell, flags, {
    partial: false,
    document: () => acceptanceDocument(file, name, result),
    tale: (notebook) => withTrials(notebook, acceptanceStory(source.scenario, name, loaded.decision.acceptance!, result), source, result),
    name: source.scenario.name,
    command,
  })
}

export interface TrialFlags extends StudyFlags {
  /** units so far, at each look */
  readonly counts: readonly number[]
}

/** How a trial stands after its looks so far. */
export async function trial(shell: Shell, file: string, flags: TrialFlags, command: string): Promise<number> {
  await checkOutputs(shell, flags)
  const { name, source, result } = await acceptanceRuns(shell, file, flags, flags.counts)
  const stands = refusals(() => trialOf(flags.counts, result))
  return await tell(shell, flags, {
    partial: false,
    document: () => trialDocument(file, name, stands),
    tale: (notebook) => withTrials(notebook, trialStory(name, stands), source, result),
    name: source.scenario.name,
    command,
  })
}

/** A tale, and under it the trials that were simulated. */
function withTrials(
  { simulatedCell }: Notebook,
  { question, cells }: Tale,
  { scenario, file }: Loaded,
  { trials }: AcceptanceResult,
): Tale {
  const what = 'The line and the same line slower, in the same trials'
  return { question, cells: [...cells, simulatedCell('simulated', scenario, file, trials, what)] }
}
