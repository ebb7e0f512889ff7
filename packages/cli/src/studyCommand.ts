/** What the commands of studies share: threads, progress, refusals, the ways to tell a result. */
import type { Simulated, SimulatedStudy, Tale } from '@loopwright/notebook'
import type { StudyOptions } from '@loopwright/study'
import { openStore, type StoreFlags, tellStore } from './keptRuns.ts'
import type { Loaded } from './loadScenario.ts'
import { progress } from './shell/progress.ts'
import { asMisuse, type Shell } from './shell/shell.ts'
import { type Notebook, type OutputFlags, tell } from './output/tell.ts'
import { type ThreadFlags, threadsOf } from './threads.ts'
import { checkOutputs } from './output/writeTables.ts'

export interface StudyFlags extends OutputFlags, StoreFlags, ThreadFlags {
  readonly replications: number
  readonly seed: string
}

export interface StudyWork<T extends SimulatedStudy> {
  /** what is being decided, for the progress */
  readonly what: string
  /** replications to come, as far as known */
  readonly total: number
  readonly source: Loaded
  /** repeats what was done */
  readonly command: string
  readonly study: (options: StudyOptions) => Promise<T>
  readonly document: (result: T) => object
  readonly tale: (result: T, notebook: Notebook) => Tale
  /** the numbers behind what was simulated */
  readonly simulated: (result: T) => Simulated
}

/**
 * Runs a study on threads and tells its result.
 *
 * @returns the exit code
 * @throws Misuse  with the sentence of a refusal
 */
export async function studyCommand<T extends SimulatedStudy>(shell: Shell, flags: StudyFlags, work: StudyWork<T>): Promise<number> {
  const { source, command } = work
  await checkOutputs(shell, flags)
  const told = progress(shell, work.what, work.total)
  const store = await openStore(shell, flags)
  const options = { seed: flags.seed, signal: shell.signal, onProgress: told.onProgress, store, ...threadsOf(flags, shell) }
  const result = await refused(shell, () => work.study(options))
  const { partial } = result
  told.end(partial)
  tellStore(shell, store)
  return await tell(shell, flags, {
    partial,
    document: () => work.document(result),
    tale: (notebook) => {
      const { period, simulatedCell, simulatedWords } = notebook
      const { question, cells } = work.tale(result, notebook)
      const { scenario, file } = source
      const what = simulatedWords(result, period(scenario))
      return { question, cells: [...cells, simulatedCell('simulated', scenario, file, work.simulated(result), what)] }
    },
    name: source.scenario.name,
    command,
  })
}

/** Begins a study; what it refuses because of what was asked becomes a `Misuse`. */
export async function refused<T>(shell: Pick<Shell, 'inOneGo' | 'signal'>, study: () => Promise<T>): Promise<T> {
  try {
    return await shell.inOneGo('the study was begun: nothing was run', study)
  } catch (error) {
    throw asMisuse(error)
  }
}
