import { stopGroups } from '@loopwright/scenario'
import { findLosses, type LossResult } from '@loopwright/study'
import { lossCauses } from '@loopwright/study/change'
import { lossDocument } from '../documents/lossDocument.ts'
import { loadScenario } from '../loadScenario.ts'
import type { Shell } from '../shell/shell.ts'
import { type StudyFlags, studyCommand } from '../studyCommand.ts'
import { storyOptions } from '../output/tell.ts'

/** The loss waterfall: units lost by cause. */
export async function losses(shell: Shell, file: string, flags: StudyFlags, command: string): Promise<number> {
  const { replications, seed } = flags
  const source = await loadScenario(shell, file, flags.variation)
  const { line } = source.scenario
  const groups = stopGroups(source.scenario)
  const lines = 2 * lossCauses(line, { stopGroups: groups }).length
  return await studyCommand<LossResult>(shell, flags, {
    what: `what is lost by what cause, ${lines} lines, ${replications} replications each, seed ${seed}`,
    total: lines * replications,
    source,
    command,
    study: (options) => findLosses(line, { replications, stopGroups: groups }, options),
    document: (result) => lossDocument(source, result),
    tale: (result, { lossStory }) => lossStory(source.scenario, result, storyOptions(source, result)),
    simulated: (result) => result,
  })
}
