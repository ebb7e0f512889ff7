import { notInRange, tooFew, unequalLength } from '../messages.ts'

/** A station that no arrow leaves; stations from 0. */
export interface ArrowCandidate {
  readonly station: number
  readonly severity: number
}

/** Which neighbour each station waits for, and what the arrows point at. */
export interface Arrows {
  /** from → to, stations from 0: towards the bottleneck */
  readonly arrows: readonly (readonly [number, number])[]
  /** the worst first */
  readonly candidates: readonly ArrowCandidate[]
}

/**
 * Arrows between neighbours, from blocked and starved shares: they point to where the output is held up. An explanation, no verdict.
 *
 * @param blocked         share of the window, by station in the order of flow
 * @param starved         likewise
 * @param closed          the last station feeds the first (our own extension)
 * @param standardErrors  of blocked[i] − starved[i + 1]; below two of them there is no arrow; left out: 0
 * @throws StatisticsError E_TOO_FEW, E_UNEQUAL_LENGTH, E_DOMAIN
 * @see Kuo, Lim & Meerkov, Bottlenecks in serial production lines: a system-theoretic approach (1996), rules from memory
 * @example arrows([0.2, 0.1, 0], [0, 0.05, 0.3], false).candidates.map(({ station }) => station) // => [1]
 */
export function arrows(
  blocked: readonly number[],
  starved: readonly number[],
  closed: boolean,
  standardErrors: readonly number[] = [],
): Arrows {
  const n = blocked.length
  if (n < 2) throw tooFew('arrows', n, 'station', 2)
  if (starved.length !== n) throw unequalLength('The blocked shares', n, 'the starved shares', starved.length)
  for (const share of [...blocked, ...starved]) if (!(share >= 0 && share <= 1)) throw notInRange('A share', share, 0, 1)
  const found: [number, number][] = []
  const pairs = closed ? n : n - 1
  for (let i = 0; i < pairs; i++) {
    const next = (i + 1) % n
    const difference = blocked[i]! - starved[next]!
    if (difference === 0 || Math.abs(difference) < 2 * (standardErrors[i] ?? 0)) continue
    found.push(difference > 0 ? [i, next] : [next, i])
  }
  const candidates = [...Array(n).keys()]
    .filter((station) => !found.some(([from]) => from === station))
    .map((station) => ({ station, severity: severityOf(station, blocked, starved, closed) }))
    .sort((a, b) => b.severity - a.severity)
  return { arrows: found, candidates }
}

function severityOf(station: number, blocked: readonly number[], starved: readonly number[], closed: boolean): number {
  const n = blocked.length
  const after = station + 1 < n || closed ? Math.abs(starved[(station + 1) % n]! - blocked[station]!) : 0
  const before = station > 0 || closed ? Math.abs(blocked[(station + n - 1) % n]! - starved[station]!) : 0
  return after + before
}
