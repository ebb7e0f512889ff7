/** What is wrong before anything runs: a plan above what the line can make, stops that come sooner than they end. */
import { completeLine, type GivenLine } from '@loopwright/line'
import { availability, type Limit, lineLimits } from '@loopwright/line/bounds'
import { distributionMean } from '@loopwright/stats'
import { tooManyEvents } from '../runs/expectedEvents.ts'

/** Something wrong before anything runs: a plan above a limit, stops that leave no time, more events than can be meant. */
export type LimitWarning =
  | {
      readonly code: 'plan above a limit'
      /** units per window */
      readonly plan: number
      readonly limit: Limit
    }
  | {
      readonly code: 'many events'
      /** of one run, about */
      readonly events: number
    }
  | {
      readonly code: 'stops longer than the time between them'
      /** names of the breakdown sources with these same times */
      readonly sources: readonly string[]
      readonly clock: 'operating' | 'calendar'
      readonly timeToFailureSeconds: number
      readonly repairSeconds: number
      /** time to failure over that and the repair, below one half */
      readonly availabilityShare: number
    }

/**
 * Warnings that need the limits of a line, and those about its stops.
 *
 * @param plan    units per window; null: there is none
 * @param limits  default: those of the line
 * @example limitWarnings(line, 200).map(({ code }) => code) // => ['plan above a limit']
 */
export function limitWarnings(given: GivenLine, plan: number | null, limits: readonly Limit[] = lineLimits(given)): LimitWarning[] {
  const line = completeLine(given)
  const first = limits[0]
  const above: LimitWarning[] =
    plan === null || first === undefined || plan <= first.unitsPerWindow ? [] : [{ code: 'plan above a limit', plan, limit: first }]
  const stops = new Map<string, LimitWarning & { code: 'stops longer than the time between them' }>()
  for (const source of line.breakdowns) {
    const { name, clock, timeToFailureSeconds, repairSeconds } = source
    const up = distributionMean(timeToFailureSeconds)
    const down = distributionMean(repairSeconds)
    if (down <= up) continue
    const key = `${clock}/${up}/${down}`
    const known = stops.get(key)
    stops.set(key, {
      code: 'stops longer than the time between them',
      sources: [...(known?.sources ?? []), name],
      clock,
      timeToFailureSeconds: up,
      repairSeconds: down,
      availabilityShare: availability(source),
    })
  }
  const events = tooManyEvents(line)
  return [...above, ...stops.values(), ...(events === null ? [] : [{ code: 'many events' as const, events }])]
}
