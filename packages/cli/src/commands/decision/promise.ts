import type { ShiftSection } from '@loopwright/decide'
import { simulatedCell } from '@loopwright/notebook'
import { needsShift, promiseOf, promiseRunsOf, promiseStory, shiftSeed, shiftsOf, shiftsStory } from '@loopwright/notebook/decision'
import { promiseDocument } from '../../documents/decision/promiseDocument.ts'
import { shiftsDocument } from '../../documents/decision/shiftsDocument.ts'
import { loadShift } from '../../loadDecision.ts'
import type { Loaded } from '../../loadScenario.ts'
import { atLeast, type Chosen, chosenBy, shiftRuns } from '../../meetingRuns.ts'
import { tell } from '../../output/tell.ts'
import { checkOutputs } from '../../output/writeTables.ts'
import { asMisuse, refusals, type Shell } from '../../shell/shell.ts'
import type { StudyFlags } from '../../studyCommand.ts'

/** What is promised to management, on one page. */
export async function promise(shell: Shell, file: string, flags: StudyFlags, command: string): Promise<number> {
  const chosen = await chosenBy(shell, file, 'promise')
  const { shifts } = chosen.loaded.decision.promise!
  if (shifts !== null) return await promiseOfShifts(shell, chosen, shifts, flags, command)
  const { source } = chosen
  const { scenario } = source
  refusals(() => needsShift(scenario, 'a promise is'))
  atLeast(2, 'shifts', flags)
  await checkOutputs(shell, flags)
  const { runs, sweep } = await simulated(shell, chosen, source, flags)
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

/** The same where shifts differ: each is simulated by itself. */
async function promiseOfShifts(
  shell: Shell,
  chosen: Chosen,
  shifts: readonly ShiftSection[],
  flags: StudyFlags,
  command: string,
): Promise<number> {
  const { loaded, name, of } = chosen
  const sources: Loaded[] = []
  for (const shift of shifts) sources.push(await loadShift(shell, loaded, of, shift))
  for (const { scenario } of sources) refusals(() => needsShift(scenario, 'a promise is'))
  atLeast(2, 'shifts', flags)
  await checkOutputs(shell, flags)
  const found: Awaited<ReturnType<typeof simulated>>[] = []
  for (const [index, shift] of shifts.entries())
    found.push(await simulated(shell, chosen, sources[index]!, { ...flags, seed: shiftSeed(flags.seed, index) }, shift))
  const runs = { name, section: loaded.decision.promise!, shifts: found.map((one) => one.runs) }
  const result = refusals(() => shiftsOf(runs))
  return await tell(shell, flags, {
    partial: found.some(({ sweep }) => sweep.partial) || shell.signal.aborted,
    document: () => shiftsDocument(loaded.file, runs, result),
    tale: () => {
      const { question, cells } = shiftsStory(runs)
      const told = found.map(({ sweep }, index) => {
        const { scenario, file } = sources[index]!
        return simulatedCell(`simulated-${index + 1}`, scenario, file, sweep, `The line of the ${shifts[index]!.name} shift`, 'one')
      })
      return { question, cells: [...cells, ...told] }
    },
    name: chosen.source.scenario.name,
    command,
  })
}

async function simulated(
  shell: Shell,
  { loaded, ...chosen }: Chosen,
  { scenario }: Loaded,
  flags: StudyFlags,
  shift: ShiftSection | null = null,
) {
  const of = shift === null ? '' : ` of the ${shift.name} shift`
  return await promiseRunsOf(
    loaded.decision,
    chosen,
    scenario,
    flags.replications,
    (line, replications, factor) =>
      shiftRuns(
        shell,
        { scenario: { ...scenario, line } },
        { ...flags, replications },
        factor === 1
          ? `what may be promised${of}`
          : `how much is made${of} while people learn, their work ${factor.toFixed(2)} times the standard`,
      ),
    shift,
  ).catch((error: unknown) => {
    throw asMisuse(error)
  })
}
