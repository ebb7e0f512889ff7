import { type LossResult, lossWaterfall } from '@loopwright/study'
import { lossDocument } from '../documents/lossDocument.ts'
import { loadScenario } from '../loadScenario.ts'
import type { Shell } from '../shell.ts'
import { stopGroups } from '../stopGroups.ts'
import { type StudyFlags, studyCommand } from '../studyCommand.ts'
import { lossSentences, lossSure, lossTable } from '../words/lossWords.ts'

/** The loss waterfall: units lost by cause. */
export async function losses(shell: Shell, file: string, flags: StudyFlags, command: string): Promise<number> {
  const { replications, seed } = flags
  const source = await loadScenario(shell, file, flags.variation)
  const { line, calendar } = source.scenario
  const per = calendar?.shifts === 1 ? 'shift' : 'window'
  const groups = stopGroups(line, source.notes)
  const lines = 2 * (groups.length + 5)
  const cells = import('../studyCells.ts')
  return await studyCommand<LossResult>(shell, flags, {
    what: `what is lost by what cause, ${lines} lines, ${replications} replications each, seed ${seed}`,
    total: lines * replications,
    source,
    command,
    question: 'Where do the units go?',
    study: (runner) => lossWaterfall(line, { seed, replications, stopGroups: groups }, runner),
    partial: (result) => result.partial,
    document: (result) => lossDocument(source, result),
    shown: async (result) => {
      const { chartCell, studyShown, tableCell } = await cells
      const { losses: figure } = await import('@loopwright/charts')
      const shown = studyShown(
        {
          sentences: lossSentences(result, per),
          sure: lossSure(result, per),
          parts: result.forecast === null ? [] : [tableCell('losses', lossTable(result, per))],
          warnings: result.partial ? [`Stopped early: fewer than ${replications} replications are in.`] : [],
        },
        {
          source,
          sentence: `${lines} lines simulated in the same worlds, ${replications} replications each, seed ${seed}.`,
          seed,
          replications,
          partial: result.partial,
        },
      )
      const [simulated, answer, ...rest] = shown.page
      const chart = result.forecast === null ? [] : [chartCell('losses-chart', figure(result, { per }))]
      return { terminal: shown.terminal, page: [simulated!, answer!, ...chart, ...rest] }
    },
  })
}
