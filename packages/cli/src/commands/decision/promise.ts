import { promiseDocument } from '../../documents/decision/promiseDocument.ts'
import { atLeast, chosenBy, shiftRuns, slowerRuns } from '../../meetingRuns.ts'
import { tell } from '../../output/tell.ts'
import { checkOutputs } from '../../output/writeTables.ts'
import { Misuse, refusals, type Shell } from '../../shell/shell.ts'
import type { StudyFlags } from '../../studyCommand.ts'

/** windows of each of them */
const LEARNING_REPLICATIONS = 40

/** What is promised to management, on one page. */
export async function promise(shell: Shell, file: string, flags: StudyFlags, command: string): Promise<number> {
  const { loaded, name, source } = await chosenBy(shell, file, 'promise')
  const { decision } = loaded
  const section = decision.promise!
  const { scenario } = source
  if (scenario.calendar?.shifts !== 1) throw new Misuse(`a promise is by shifts: "${scenario.name}" needs a calendar that judges one shift`)
  atLeast(2, 'shifts', flags)
  await checkOutputs(shell, flags)
  const sweep = await shiftRuns(shell, source, flags, 'what may be promised')
  const notebook = await import('@loopwright/notebook')
  refusals(() => notebook.needsUnits(sweep.counts[0]!.units))
  const factors = notebook.slowerFactors(section)
  const few = { ...flags, replications: Math.min(flags.replications, LEARNING_REPLICATIONS) }
  const slower = await slowerRuns(shell, source, factors, few)
  const partial = sweep.partial || shell.signal.aborted
  const runs = {
    name,
    scenario,
    section,
    crew: decision.alternatives[section.of]!.crew ?? decision.money?.crew ?? null,
    forecast: notebook.forecastOf(scenario, sweep, section.daysPerWeek * section.shiftsPerDay),
    slower: factors.length === 0 ? [] : [{ factor: 1, units: sweep.counts[0]!.units }, ...slower].map(notebook.slowerPoint),
  }
  return await tell(shell, flags, {
    partial,
    document: () => promiseDocument(file, runs, notebook.promiseOf(runs)),
    tale: () => {
      const { question, cells } = notebook.promiseStory(runs)
      return {
        question,
        cells: [...cells, notebook.simulatedCell('simulated', scenario, source.file, sweep, 'The line as it stands', 'one')],
      }
    },
    name: scenario.name,
    command,
  })
}
