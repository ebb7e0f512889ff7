import type { LineSpec } from '@loopwright/line'

/**
 * Seconds of the window that are no break.
 *
 * @returns  seconds; breaks that overlap count once
 * @example workingSeconds({ window: { warmupSeconds: 0, endSeconds: 100 }, breaks: [{ startSeconds: 90, lengthSeconds: 20 }] }) // => 90
 */
export function workingSeconds(spec: Pick<LineSpec, 'window' | 'breaks'>): number {
  const { warmupSeconds, endSeconds } = spec.window
  let seconds = endSeconds - warmupSeconds
  let from = warmupSeconds
  for (const pause of [...spec.breaks].sort((a, b) => a.startSeconds - b.startSeconds)) {
    const start = Math.max(from, pause.startSeconds)
    const end = Math.min(endSeconds, pause.startSeconds + pause.lengthSeconds)
    if (end > start) {
      seconds -= end - start
      from = end
    }
  }
  return seconds
}
