import { progressWords, type RunsDone } from '@loopwright/charts/table'
import { TERMINAL_COLUMNS } from '../terminal/terminalOptions.ts'

/**
 * What a study of several lines has done so far, in one line.
 *
 * @param what            what is being decided, in a few words; a study that decides several things one after the other says so itself
 * @param elapsedSeconds  since it began
 */
export function linesProgress(
  what: string,
  progress: RunsDone & { readonly what?: string },
  elapsedSeconds: number,
  columns: number = TERMINAL_COLUMNS,
): string {
  return progressWords(progress.what ?? what, progress, elapsedSeconds, columns - 1)
}
