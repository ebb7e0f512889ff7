import type { SweepProgress } from '@loopwright/study'

/** share of the runs from which on the time left is more than a guess */
const KNOWN_FROM = 0.05

/**
 * What a sweep has done so far, in one line of less than 80 characters.
 *
 * @param elapsedSeconds  since it began
 */
export function sweepProgressLine(counts: readonly number[], progress: SweepProgress, elapsedSeconds: number): string {
  const { done, total, precision } = progress
  const span = counts.length === 1 ? `${counts[0]}` : `${counts[0]} to ${counts.at(-1)}`
  const parts = [`${span} carriers: ${done} of ${total} runs`]
  if (precision !== null) parts.push(`means known to ± ${(precision * 100).toFixed(1)} %`)
  if (done >= KNOWN_FROM * total && done < total) parts.push(`${Math.ceil((elapsedSeconds / done) * (total - done))} s left`)
  return parts.join(', ')
}
