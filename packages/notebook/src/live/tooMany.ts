/** Lines that a page does not simulate. */
import type { LineSpec } from '@loopwright/line'
import { eventWords, tooManyEvents } from '@loopwright/study/change'

/**
 * Why a page does not simulate a line: one run alone would keep its reader waiting.
 *
 * @returns  a sentence; null: it does
 * @example tooMany(line) // => null
 */
export function tooMany(line: LineSpec): string | null {
  const events = tooManyEvents(line)
  return events === null
    ? null
    : `One run of this asks for about ${eventWords(events)}, more than a page simulates: look at the shortest times of stops and arrivals.`
}
