import type { LineSpec } from '../spec.ts'

/**
 * Seconds of the window, breaks included.
 *
 * @example windowSecondsOf({ window: { warmupSeconds: 20, endSeconds: 100 } }) // => 80
 */
export const windowSecondsOf = ({ window: { warmupSeconds, endSeconds } }: Pick<LineSpec, 'window'>): number => endSeconds - warmupSeconds

/**
 * Seconds of the window that are no break.
 *
 * @returns  seconds; breaks that overlap count once
 * @example workingSeconds({ window: { warmupSeconds: 0, endSeconds: 100 }, breaks: [{ startSeconds: 90, lengthSeconds: 20 }] }) // => 90
 */
export function workingSeconds(spec: Pick<LineSpec, 'window' | 'breaks'>): number {
  return breaksWithin(spec).reduce((left, seconds) => left - seconds, windowSecondsOf(spec))
}

/** Lengths of the breaks within the window, seconds, each > 0; of breaks that overlap the later one counts from the end of the earlier. */
export function breaksWithin({ window, breaks }: Pick<LineSpec, 'window' | 'breaks'>): number[] {
  let from = window.warmupSeconds
  const lengths: number[] = []
  for (const pause of [...breaks].sort((a, b) => a.startSeconds - b.startSeconds)) {
    const start = Math.max(from, pause.startSeconds)
    const end = Math.min(window.endSeconds, pause.startSeconds + pause.lengthSeconds)
    if (end <= start) continue
    lengths.push(end - start)
    from = end
  }
  return lengths
}
