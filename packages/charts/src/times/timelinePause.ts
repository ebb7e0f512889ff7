/** Stops and breaks of a stretch of a run: what they hold is neither work nor a wait. */

/** A stop or a break, seconds from the start of the run. */
export interface TimelinePause {
  readonly name: string
  readonly from: number
  readonly to: number
  /** indices of the zones where it is drawn; null: all */
  readonly zones: readonly number[] | null
  /** zones whose work it holds */
  readonly work: readonly number[]
  /** zones whose moves it holds, so that what is done there cannot go on */
  readonly moves: readonly number[]
}

/** A carrier in a zone, seconds. */
export interface Span {
  readonly carrier: number
  readonly zone: number
  readonly from: number
  readonly to: number
}

/**
 * Spans cut where a stop or break holds what is in their zone.
 *
 * @example splitSpans([{ carrier: 0, zone: 2, from: 0, to: 9 }], [{ name: 'break', from: 4, to: 20, zones: null, work: [2], moves: [] }], 'work').held // => [{ carrier: 0, zone: 2, from: 4, to: 9 }]
 */
export function splitSpans(
  spans: readonly Span[],
  pauses: readonly TimelinePause[],
  what: 'work' | 'moves',
): { readonly free: Span[]; readonly held: Span[] } {
  const free: Span[] = []
  const held: Span[] = []
  for (const span of spans) {
    const own = pauses
      .filter((pause) => pause[what].includes(span.zone))
      .map(({ from, to }) => [Math.max(from, span.from), Math.min(to, span.to)] as const)
      .filter(([from, to]) => to > from)
      .sort(([a], [b]) => a - b)
    let at = span.from
    for (const [from, to] of own) {
      if (from > at) free.push({ ...span, from: at, to: from })
      if (to > at) held.push({ ...span, from: Math.max(at, from), to })
      at = Math.max(at, to)
    }
    if (span.to > at) free.push({ ...span, from: at })
  }
  return { free, held }
}
