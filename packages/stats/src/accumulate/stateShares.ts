import { emptyWindow, windowNotFilled } from '../messages.ts'

/** One stretch in one state. */
export interface Spell {
  readonly state: string
  readonly from: number
  readonly to: number
}

export interface StateShares {
  /** seconds in the window, by state, in the order of first appearance */
  readonly seconds: Readonly<Record<string, number>>
  /** of the window less the states left out; they sum to 1 */
  readonly shares: Readonly<Record<string, number>>
  /** what the shares are shares of, seconds */
  readonly denominator: number
}

/**
 * Seconds and shares of each state over a window. The seconds must fill the window exactly before anything is divided.
 *
 * @param spells  cover the window, each instant once
 * @param without states taken out of table and denominator ("without breaks")
 * @throws StatisticsError E_DOMAIN for a window without length, or one that the spells do not fill exactly
 * @example stateShares([{ state: 'working', from: 0, to: 6 }, { state: 'starved', from: 6, to: 8 }], 0, 8).shares // => { working: 0.75, starved: 0.25 }
 */
export function stateShares(spells: readonly Spell[], start: number, end: number, without: readonly string[] = []): StateShares {
  if (!(end > start)) throw emptyWindow(start, end)
  const all: Record<string, number> = {}
  let covered = 0
  for (const { state, from, to } of spells) {
    const seconds = Math.min(end, to) - Math.max(start, from)
    if (seconds <= 0) continue
    all[state] = (all[state] ?? 0) + seconds
    covered += seconds
  }
  if (covered !== end - start) throw windowNotFilled(covered, end - start)
  const kept = Object.entries(all).filter(([state]) => !without.includes(state))
  const denominator = kept.reduce((sum, [, seconds]) => sum + seconds, 0)
  if (denominator === 0) throw emptyWindow(start, start)
  return {
    seconds: Object.fromEntries(kept),
    shares: Object.fromEntries(kept.map(([state, seconds]) => [state, seconds / denominator])),
    denominator,
  }
}
