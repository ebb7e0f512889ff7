/** Luck of what strikes again and again: breakdowns, and arrivals too. */
import type { ArrivalsSpec, BreakdownSpec } from '@loopwright/line'
import { type Distribution, distributionCdf, hasAtoms, meanUpTo } from '@loopwright/stats'
import { Draws, type World } from './series.ts'

/** Seconds of a clock, or numbers of uses: from (excluded, of numbers included) … to (included, of numbers excluded), ≥ 0. */
export interface Stretch {
  readonly from: number
  readonly to: number
}

/** What a world gives more than is to be expected on a stretch; of mean 0, exactly. */
export type Luck = (world: World, stretch: Stretch) => number

/** Gaps between events by one stream, and what each event counts by another. */
interface Renewal {
  readonly gaps: { readonly stream: string; readonly seconds: Distribution }
  readonly marks: { readonly stream: string; readonly amount: Distribution }
  /** an event counts no more than this */
  readonly most: number
  /** the clock of the gaps stands still for the amount of each event */
  readonly waits: boolean
}

/** a clock that strikes more often tells nothing by its single draws */
const EVENTS_MAX = 100_000

/**
 * Seconds that the repairs of a source take more than is to be expected, over a stretch of its clock; those of failures within it, each up to `longestSeconds`:
 * a window can lose no more by it. Null where chance reaches neither failures nor repairs.
 */
export function stopLuckOf({ name, clock, timeToFailureSeconds, repairSeconds }: BreakdownSpec, longestSeconds: number): Luck | null {
  return renewalLuck({
    gaps: { stream: `down/${name}`, seconds: timeToFailureSeconds },
    marks: { stream: `repair/${name}`, amount: repairSeconds },
    most: longestSeconds,
    waits: clock === 'calendar',
  })
}

/** Arrivals more than is to be expected on a stretch of the clock; null where chance does not reach their times. */
export function arrivalLuckOf(name: string, arrivals: ArrivalsSpec): Luck | null {
  if (arrivals.kind !== 'every') return null
  const one = { stream: '', amount: { kind: 'constant', value: 1 } } as const
  return renewalLuck({ gaps: { stream: `arrival/${name}`, seconds: arrivals.seconds }, marks: one, most: 1, waits: false })
}

/**
 * An event that has not come after t seconds comes within the next ones at the rate of its hazard, whatever came before. So the number of events less the sum of
 * hazards passed has the mean 0 on every stretch, and so has what they count less its mean times that sum, since it is drawn for itself. Where the gaps have single
 * values (a constant, a list) the events are taken as they are, and only what they count is luck.
 *
 * @see Andersen, Borgan, Gill & Keiding, Statistical Models Based on Counting Processes (1993), from memory: the compensator of a counting process
 */
function renewalLuck({ gaps, marks, most, waits }: Renewal): Luck | null {
  const between = new Draws(gaps.seconds)
  const amounts = new Draws(marks.amount)
  const counted = between.random && !hasAtoms(gaps.seconds)
  if (!counted && !amounts.random) return null
  const mean = amounts.random ? meanUpTo(marks.amount, most) : 0
  const hazardAt = (age: number): number => (age <= 0 ? 0 : -Math.log1p(-distributionCdf(gaps.seconds, age)))
  return (world, { from, to }) => {
    let luck = 0
    let clock = 0
    for (let k = 0; k < EVENTS_MAX && clock < to; k++) {
      const event = clock + between.at(world, gaps.stream, k)
      const within = event > from && event <= to
      const amount = within || waits || !amounts.random ? amounts.at(world, marks.stream, k) : 0
      // what is no matter of chance is expected as it is
      const expected = amounts.random ? mean : Math.min(amount, most)
      if (counted && event > from) {
        // no more than the whole gap, where an inverse is less exact than its function
        const whole = -Math.log1p(-world.uniform(gaps.stream, k))
        const passedAt = (at: number): number => Math.min(whole, hazardAt(at - clock))
        luck -= expected * ((event <= to ? whole : passedAt(to)) - passedAt(from))
      }
      if (within) luck += Math.min(amount, most) - (counted ? 0 : expected)
      clock = event + (waits ? amount : 0)
    }
    return luck
  }
}
