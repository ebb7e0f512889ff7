/** share of the runs from which on the time left is more than a guess */
const KNOWN_FROM = 0.05

/**
 * What a study of several lines has done so far, in one line of less than 80 characters.
 *
 * @param what            what is being decided, in a few words
 * @param elapsedSeconds  since it began
 */
export function linesProgress(
  what: string,
  progress: { readonly done: number; readonly total: number; readonly precision?: number | null; readonly what?: string },
  elapsedSeconds: number,
): string {
  const { done, total, precision } = progress
  const known = precision == null ? '' : `, means known to ± ${(precision * 100).toFixed(1)} %`
  const left =
    done > 0 && done >= KNOWN_FROM * total && done < total ? `, ${Math.ceil((elapsedSeconds / done) * (total - done))} s left` : ''
  return `${progress.what ?? what}: ${done} of ${total} runs${known}${left}`
}
