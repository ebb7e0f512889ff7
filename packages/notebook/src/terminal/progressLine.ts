import { progressWords, type RunsDone } from '@loopwright/charts/table'
import type { CarriersProgress, SweepProgress } from '@loopwright/study'
import { TERMINAL_COLUMNS } from './terminalOptions.ts'

/** What a sweep has done so far, in one line. `elapsedSeconds`: since it began. */
export function sweepProgressLine(counts: readonly number[], progress: SweepProgress, elapsedSeconds: number): string {
  const span = counts.length === 1 ? `${counts[0]}` : `${counts[0]} to ${counts.at(-1)}`
  const runs = counts.length === 1 ? { ...progress, leading: null } : progress
  return progressWords(`${span} carriers`, runs, elapsedSeconds, TERMINAL_COLUMNS - 1)
}

/** What a carrier study is deciding, and has done so far, in one line. `elapsedSeconds`: since it began. */
export function studyProgressLine(progress: CarriersProgress, elapsedSeconds: number): string {
  return progressWords(studyStage(progress), progress, elapsedSeconds, TERMINAL_COLUMNS - 1)
}

/**
 * What a carrier study is deciding.
 *
 * @example studyStage({ deciding: 'best', from: 5, to: 17 }) // => '5 to 17 carriers: which is best'
 */
export function studyStage({ deciding, from, to }: Pick<CarriersProgress, 'deciding' | 'from' | 'to'>): string {
  return `${from} to ${to} carriers: ${deciding === 'best' ? 'which is best' : 'which is enough'}`
}

/**
 * What a study of several lines has done so far, in one line.
 *
 * @param what            what is being decided, in a few words; a study that decides several things one after the other says so itself
 * @param elapsedSeconds  since it began
 */
export function linesProgress(what: string, progress: RunsDone & { readonly what?: string }, elapsedSeconds: number): string {
  return progressWords(progress.what ?? what, progress, elapsedSeconds, TERMINAL_COLUMNS - 1)
}
