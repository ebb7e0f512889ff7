import { simulatedCell } from '@loopwright/notebook'
import { needsShift, promiseOf, promiseRunsOf, promiseStory } from '@loopwright/notebook/decision'
import { promiseDocument } from '../../documents/decision/promiseDocument.ts'
import { atLeast, chosenBy, shiftRuns } from '../../meetingRuns.ts'
import { tell } from '../../output/tell.ts'
import { checkOutputs } from '../../output/writeTables.ts'
import { asMisuse, refusals, type Shell } from '../../shell/shell.ts'
import type { StudyFlags } from '../../studyCommand.ts'

/** What is promised to management, on one page. */
export async function promise(shell: Shell, file: string, flags: StudyFlags, command: string): Promise<number> {
  const { loaded, source, ...chosen } = await chosenBy(shell, file, 'promise')
  const { scenario } = source
  refusals(() => needsShift(scenario, 'a promise is'))
  atLeast(2, 'shifts', flags)
  await checkOutputs(shell, flags)
  const { runs, sweep } = await promiseRunsOf(loaded.decision, chosen, scenario, flags.replications, (line, replications, factor) =>
    shiftRuns(
      shell,
      { scenario: { ...scenario, line } },
      { ...flags, replications },
      factor === 1 ? 'what may be promised' : `how much is made while people learn, work ${factor.toFixed(2)} times the standard`,
    ),
  ).catch((error: unknown) => {
    throw asMisuse(error)
  })
  return await tell(shell, flags, {
    partial: sweep.partial || shell.signal.aborted,
    document: () => promiseDocument(file, runs, promiseOf(runs)),
    tale: () => {
      const { question, cells } = promiseStory(runs)
      return { question, cells: [...cells, simulatedCell('simulated', scenario, source.file, sweep, 'The line as it stands', 'one')] }
    },
    name: scenario.name,
    command,
  })
}
