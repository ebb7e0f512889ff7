/** What two results must share before they may be paired. */
export interface RunKey {
  readonly seed: string
  readonly replications: number
  /** instants of the window, seconds */
  readonly warmupSeconds: number
  readonly endSeconds: number
}

/**
 * The first reason why two results cannot be paired, as a sentence; null: they can.
 *
 * @example whyNotPairable({ seed: '42', replications: 9, warmupSeconds: 0, endSeconds: 60 }, { seed: '43', replications: 9, warmupSeconds: 0, endSeconds: 60 }) // => 'These two results come from different seeds (42 and 43), so they cannot be paired.'
 */
export function whyNotPairable(first: RunKey, second: RunKey): string | null {
  const differs = (what: string, a: string | number, b: string | number): string | null =>
    a === b ? null : `These two results come from different ${what} (${a} and ${b}), so they cannot be paired.`
  return (
    differs('seeds', first.seed, second.seed) ??
    differs('numbers of replications', first.replications, second.replications) ??
    differs('warm-up cuts', first.warmupSeconds, second.warmupSeconds) ??
    differs('windows', first.endSeconds, second.endSeconds)
  )
}
