import type { LineSpec } from '../spec.ts'

/**
 * Seconds of the window that are no break.
 *
 * @returns  seconds; breaks that overlap count once
 * @example workingSeconds({ window: { warmupSeconds: 0, endSeconds: 100 }, breaks: [{ startSeconds: 90, lengthSeconds: 20 }] }) // => 90
 */
export function workingSeconds(spec: Pick<LineSpec, 'window' | 'breaks'>): number {
  const { warmupSeconds, endSeconds } = spec.window
  return breaksWithin(spec).reduce((left, seconds) => left - seconds, endSeconds - warmupSeconds)
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
