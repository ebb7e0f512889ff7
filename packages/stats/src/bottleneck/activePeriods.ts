import { emptyWindow } from '../messages.ts'

/** An uninterrupted stretch in which a station does not wait. */
export interface ActivePeriod {
  readonly from: number
  readonly to: number
}

/** From … to the station in the longest such stretch; null: all wait. */
export interface MomentaryBottleneck {
  readonly from: number
  readonly to: number
  readonly station: string | null
  /** the stretch, whole; null with the station */
  readonly period: ActivePeriod | null
}

export interface ActivePeriods {
  readonly momentary: readonly MomentaryBottleneck[]
  /** by station: share of the window as the only bottleneck */
  readonly sole: Readonly<Record<string, number>>
  /** by station: share of the window in which its stretch overlaps the one before or after */
  readonly shifting: Readonly<Record<string, number>>
}

/**
 * The bottleneck from instant to instant: the station with the longest uninterrupted not-waiting stretch; overlaps of one with the next count as shifting. An explanation, no verdict.
 *
 * @param active  by station, stretches in order of time; ties go to the station listed first
 * @throws StatisticsError E_DOMAIN for a window without length
 * @see Roser, Nakano & Tanaka, A practical bottleneck detection method (2001)
 */
export function activePeriods(active: Readonly<Record<string, readonly ActivePeriod[]>>, start: number, end: number): ActivePeriods {
  if (!(end > start)) throw emptyWindow(start, end)
  const momentary = momentaryOf(active, start, end)
  const runs = momentary.filter((one) => one.station !== null).map((one) => ({ station: one.station!, ...one.period! }))
  const sole: Record<string, number> = {}
  const shifting: Record<string, number> = {}
  for (const station of Object.keys(active)) {
    sole[station] = 0
    shifting[station] = 0
  }
  runs.forEach((run, i) => {
    const from = Math.max(start, run.from)
    const to = Math.min(end, run.to)
    const before = runs[i - 1]
    const after = runs[i + 1]
    const sharedUntil = before === undefined ? from : Math.max(from, Math.min(before.to, to))
    const sharedSince = after === undefined ? to : Math.min(to, Math.max(after.from, from))
    const alone = Math.max(0, sharedSince - sharedUntil)
    sole[run.station]! += alone
    shifting[run.station]! += to - from - alone
  })
  for (const station of Object.keys(active)) {
    sole[station]! /= end - start
    shifting[station]! /= end - start
  }
  return { momentary, sole, shifting }
}

function momentaryOf(active: Readonly<Record<string, readonly ActivePeriod[]>>, start: number, end: number): MomentaryBottleneck[] {
  const all = Object.entries(active).flatMap(([station, periods]) => periods.map((period) => ({ station, period })))
  const instants = [...new Set([start, end, ...all.flatMap(({ period }) => [period.from, period.to])])]
    .filter((instant) => instant >= start && instant <= end)
    .sort((a, b) => a - b)
  const found: MomentaryBottleneck[] = []
  for (let i = 0; i + 1 < instants.length; i++) {
    const from = instants[i]!
    const to = instants[i + 1]!
    let longest: (typeof all)[number] | null = null
    for (const one of all) {
      if (one.period.from > from || one.period.to < to) continue
      if (longest === null || lengthOf(one.period) > lengthOf(longest.period)) longest = one
    }
    const last = found.at(-1)
    if (last !== undefined && last.period === (longest?.period ?? null)) found[found.length - 1] = { ...last, to }
    else found.push({ from, to, station: longest?.station ?? null, period: longest?.period ?? null })
  }
  return found
}

const lengthOf = (period: ActivePeriod): number => period.to - period.from
