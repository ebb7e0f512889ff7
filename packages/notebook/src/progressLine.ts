import type { CarrierStudyProgress, SweepProgress } from '@loopwright/study'

/** share of the runs from which on the time left is more than a guess */
const KNOWN_FROM = 0.05

/**
 * What a sweep has done so far, in one line of less than 80 characters.
 *
 * @param elapsedSeconds  since it began
 */
export function sweepProgressLine(counts: readonly number[], progress: SweepProgress, elapsedSeconds: number): string {
  const span = counts.length === 1 ? `${counts[0]}` : `${counts[0]} to ${counts.at(-1)}`
  return line(`${span} carriers`, progress, elapsedSeconds, counts.length === 1 ? null : progress.leading)
}

/**
 * What a carrier study is deciding, and has done so far, in one line of less than 80 characters.
 *
 * @param elapsedSeconds  since it began
 */
export function studyProgressLine(progress: CarrierStudyProgress, elapsedSeconds: number): string {
  return line(studyStage(progress), progress, elapsedSeconds)
}

/**
 * What a carrier study is deciding.
 *
 * @example studyStage({ deciding: 'best', from: 5, to: 17 }) // => '5 to 17 carriers: which is best'
 */
export function studyStage({ deciding, from, to }: Pick<CarrierStudyProgress, 'deciding' | 'from' | 'to'>): string {
  return `${from} to ${to} carriers: ${deciding === 'best' ? 'which is best' : 'which is enough'}`
}

function line(what: string, progress: Omit<SweepProgress, 'leading'>, elapsedSeconds: number, leading: number | null = null): string {
  const { done, total, precision, recalled = 0 } = progress
  const parts = [`${what}: ${done} of ${total} runs`]
  if (leading !== null) parts.push(`most with ${leading}`)
  if (precision !== null) parts.push(`means known to ± ${(precision * 100).toFixed(1)} %`)
  const run = done - recalled
  if (run > 0 && done >= KNOWN_FROM * total && done < total) parts.push(`${Math.ceil((elapsedSeconds / run) * (total - done))} s left`)
  return parts.join(', ')
}
