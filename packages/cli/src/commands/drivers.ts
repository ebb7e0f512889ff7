import { type DriverResult, driverStudy, driversOf } from '@loopwright/study'
import { driverDocument } from '../documents/driverDocument.ts'
import { loadScenario } from '../loadScenario.ts'
import type { Shell } from '../shell.ts'
import { mixGroups, stopGroups } from '../stopGroups.ts'
import { type StudyFlags, studyCommand } from '../studyCommand.ts'
import { driverSentences, driverSure, driverTable, explanationSentences, sharesTable } from '../words/driverWords.ts'

/** What drives the output, and what limits it. */
export async function drivers(shell: Shell, file: string, flags: StudyFlags, command: string): Promise<number> {
  const { replications, seed } = flags
  const source = await loadScenario(shell, file, flags.variation)
  const { line, calendar } = source.scenario
  const per = calendar?.shifts === 1 ? 'shift' : 'window'
  const groups = { stopGroups: stopGroups(line, source.notes), mixGroups: mixGroups(source.notes) }
  const lines = 2 * driversOf(line, groups).length + 3
  const cells = import('../studyCells.ts')
  return await studyCommand<DriverResult>(shell, flags, {
    what: `what drives the output, ${lines} lines, ${replications} replications each, seed ${seed}`,
    total: lines * replications,
    source,
    command,
    question: 'What limits the line?',
    study: (runner) => driverStudy(line, { seed, replications, ...groups }, runner),
    partial: (result) => result.partial,
    document: (result) => driverDocument(source, result),
    shown: async (result) => {
      const { chartCell, prose, studyShown, tableCell } = await cells
      const { drivers: figure } = await import('@loopwright/charts')
      const shares = sharesTable(result, line)
      const shown = studyShown(
        {
          sentences: driverSentences(result, per),
          sure: driverSure(result, per),
          parts: [
            ...(result.drivers.length === 0 ? [] : [tableCell('drivers', driverTable(result, per), 'terminal')]),
            prose('explanation', explanationSentences(result, line)),
            ...(shares === null ? [] : [tableCell('shares', shares)]),
          ],
          pageParts: [],
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
      const chart = result.drivers.length === 0 ? [] : [chartCell('drivers-chart', figure(result, { per }))]
      return { terminal: shown.terminal, page: [simulated!, answer!, ...chart, ...rest] }
    },
  })
}
