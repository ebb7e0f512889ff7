import { sweepCarriers } from '@loopwright/study'
import { forecastDocument } from '../documents/forecastDocument.ts'
import { openStore, type StoreFlags, tellStore } from '../keptRuns.ts'
import { loadScenario } from '../loadScenario.ts'
import { progress } from '../shell/progress.ts'
import { Misuse, type Shell } from '../shell/shell.ts'
import { refused } from '../studyCommand.ts'
import { type OutputFlags, storyOptions, tell } from '../output/tell.ts'
import { type ThreadFlags, threadsOf } from '../threads.ts'
import { checkOutputs } from '../output/writeTables.ts'

export interface ForecastFlags extends OutputFlags, StoreFlags, ThreadFlags {
  readonly replications: number
  readonly seed: string
  /** default: shifts of a day on five days; without a calendar there are no weeks */
  readonly shiftsPerWeek?: number
}

/** What may be promised per shift and per week, and the overtime that the plan takes, of the line as it stands. */
export async function forecast(shell: Shell, file: string, flags: ForecastFlags, command: string): Promise<number> {
  const source = await loadScenario(shell, file, flags.variation)
  const { line, plan, calendar } = source.scenario
  const { replications, seed } = flags
  if (calendar !== null && calendar.shifts !== 1)
    throw new Misuse(
      `a forecast is of one shift; the scenario judges ${calendar.shifts} together: write one of them under "calendar: judge:"`,
    )
  await checkOutputs(shell, flags)
  const told = progress(shell, `what may be promised, ${replications} replications, seed ${seed}`, replications)
  const store = await openStore(shell, flags)
  const sweep = await refused(
    sweepCarriers(
      line,
      { counts: [line.carriers.count], replications, plan: plan?.unitsPerWindow ?? null },
      { seed, store, signal: shell.signal, onProgress: told.onProgress, ...threadsOf(flags, shell) },
    ),
  )
  told.end(sweep.partial)
  tellStore(shell, store)
  const notebook = await import('@loopwright/notebook')
  const shiftsPerWeek = flags.shiftsPerWeek ?? notebook.usualShiftsPerWeek(source.notes)
  const result = notebook.forecastOf(source.scenario, sweep, shiftsPerWeek)
  return await tell(shell, flags, {
    partial: sweep.partial,
    document: () => forecastDocument(source, result),
    tale: async () =>
      sweep.counts[0]!.replications === 0
        ? notebook.emptyTale('Stopped before the first shift was simulated: nothing to tell.')
        : notebook.forecastStory(source.scenario, result, storyOptions(shell, source, flags)),
    name: source.scenario.name,
    command,
  })
}
