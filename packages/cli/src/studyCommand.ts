/** What the commands of studies share: threads, progress, refusals, the ways to tell a result. */
import { type Runner, threadRunner } from '@loopwright/study'
import type { Shown } from './cells.ts'
import { openStore, type StoreFlags, tellStore } from './keptRuns.ts'
import type { Loaded } from './loadScenario.ts'
import { progress } from './progress.ts'
import { Misuse, type Shell } from './shell.ts'
import { type OutputFlags, tell } from './tell.ts'
import { type ThreadFlags, threadsOf } from './threads.ts'

export interface StudyFlags extends OutputFlags, StoreFlags, ThreadFlags {
  readonly replications: number
  readonly seed: string
}

export interface StudyWork<T> {
  /** what is being decided, for the progress */
  readonly what: string
  /** replications to come, as far as known */
  readonly total: number
  readonly source: Loaded
  /** repeats what was done */
  readonly command: string
  /** heading of the page */
  readonly question: string
  readonly study: (runner: Runner) => Promise<T>
  readonly partial: (result: T) => boolean
  readonly document: (result: T) => object
  readonly shown: (result: T) => Promise<Shown>
}

/**
 * Runs a study on threads and tells its result.
 *
 * @returns the exit code
 * @throws Misuse  with the sentence of a refusal
 */
export async function studyCommand<T>(shell: Shell, flags: StudyFlags, work: StudyWork<T>): Promise<number> {
  if (flags.out !== undefined) await shell.checkWritable(flags.out)
  const told = progress(shell, work.what, work.total)
  const store = await openStore(shell, flags)
  const runner = threadRunner({ signal: shell.signal, onProgress: told.onProgress, store, ...threadsOf(flags) })
  const result = await refused(work.study(runner)).finally(() => runner.close())
  tellStore(shell, store)
  const partial = work.partial(result)
  told.end(partial)
  return await tell(shell, flags, {
    partial,
    document: () => work.document(result),
    tables: () => [],
    shown: () => work.shown(result),
    source: work.source,
    command: work.command,
    question: work.question,
  })
}

/** What a study refuses because of what was asked becomes a `Misuse`. */
export async function refused<T>(study: Promise<T>): Promise<T> {
  try {
    return await study
  } catch (error) {
    if (error instanceof RangeError || (error instanceof Error && error.name === 'StatisticsError')) throw new Misuse(error.message)
    throw error
  }
}
