/** A stop log judged: time between stops on the clock that runs, repairs, short stops, and how available each place was. */
import { type Distribution, Tally } from '@loopwright/stats'
import type { DurationChoice } from '@loopwright/stats/fit'
import { chiSquareQuantile, fQuantile } from '@loopwright/stats/special'
import { chosenCurve } from '../times/timeStudy.ts'
import { streamOf } from '../values/streamOf.ts'
import type { Stop } from './readStops.ts'
import { usualStop } from './usualStop.ts'
import { workedBetween, type WorkingHours } from './workingHours.ts'

/** How a stop log is judged. */
export interface StopStudyRequest {
  /** the log covers from here … to here; seconds of the wall clock. Default: from its first start to its last instant, which is said */
  readonly from?: number
  readonly to?: number
  /** when the line works; null: the clock never stands still. Default: null */
  readonly hours?: WorkingHours | null
  /** `operating`: the time between stops counts while the place could work; `calendar`: all of it. Default: operating */
  readonly clock?: 'operating' | 'calendar'
  /** shorter stops are told apart; seconds. Default: 300 */
  readonly shortBelow?: number
  /** by place and cause, or by place alone. Default: both */
  readonly by?: 'place and cause' | 'place'
  /** Default: '1' */
  readonly seed?: string
}

/** Stops of one place and cause; short ones and others are two of these. */
export interface StopTimes {
  readonly place: string
  /** '': all causes */
  readonly cause: string
  readonly short: boolean
  readonly stops: readonly Stop[]
  readonly n: number
  /** seconds that the clock ran */
  readonly exposure: number
  /** mean time between stops, of the clock that runs; null: no stop */
  readonly between: number | null
  /** of the 95 % interval of it; high null: nothing bounds it from above */
  readonly betweenLow: number
  readonly betweenHigh: number | null
  /** seconds, of stops that are over */
  readonly repairs: readonly number[]
  /** stops that were not over when the log ended */
  readonly open: number
  /** mean repair, with what the open ones have lasted so far; null: none is over */
  readonly repair: number | null
  readonly choice: DurationChoice | null
  /** what is simulated */
  readonly after: Distribution
  readonly lasts: Distribution
  /** '': measured; else what stands in, and why */
  readonly standsIn: string
}

/** How available a place was. */
export interface PlaceTime {
  readonly place: string
  /** seconds that the clock of the log ran */
  readonly seconds: number
  /** seconds that it stood in them; overlaps counted once */
  readonly down: number
  readonly availability: number
  /** of the 95 % interval of what it is in the long run; null: too few stops */
  readonly low: number | null
  readonly high: number | null
}

/** A stop log, judged. */
export interface StopStudy {
  readonly from: number
  readonly to: number
  /** the ends were not given, and the log's own stand in */
  readonly endsGuessed: boolean
  readonly clock: 'operating' | 'calendar'
  readonly times: readonly StopTimes[]
  readonly places: readonly PlaceTime[]
  /** stops of one place that lie over each other: the lines of both */
  readonly overlaps: readonly { readonly place: string; readonly lines: readonly [number, number] }[]
  /** stops that lie wholly in hours in which the line does not work: they do not count */
  readonly outside: readonly { readonly place: string; readonly line: number }[]
}

/** fewer stops tell no time between them */
export const STOPS_FEW = 3
const CURVE_FROM = 20
const SHORT_BELOW = 300

/**
 * Stops by place and cause. The time between is exponential: exposure over stops, its interval by the chi-square of a count.
 *
 * @see Garwood, Fiducial limits for the Poisson distribution (1936); MIL-HDBK-338B for repairs, from memory
 * @example stopStudy([{ place: 'S3', cause: 'tool', start: 3600, end: 3900, line: 2 }, { place: 'S3', cause: 'tool', start: 7200, end: 7500, line: 3 }], { from: 0, to: 36000 }).times[0].between // => 17700
 */
export function stopStudy(stops: readonly Stop[], request: StopStudyRequest = {}): StopStudy {
  const { hours = null, clock = 'operating', shortBelow = SHORT_BELOW, by = 'place and cause', seed = '1' } = request
  const from = request.from ?? stops.reduce((first, { start }) => Math.min(first, start), Number.POSITIVE_INFINITY)
  const to = request.to ?? stops.reduce((last, { start, end }) => Math.max(last, end ?? start), Number.NEGATIVE_INFINITY)
  const within = stops.filter(({ start, end }) => start <= to && (end ?? to) >= from)
  const idle = (one: Stop): boolean => hours !== null && (one.end ?? to) > one.start && workedBetween(one.start, one.end ?? to, hours) === 0
  const inside = within.filter((one) => !idle(one))
  const outside = within.filter(idle).map(({ place, line }) => ({ place, line }))
  const lasting = ({ start, end }: Stop): number => workedBetween(Math.max(from, start), Math.min(to, end ?? to), hours)
  const names = [...new Set(inside.map(({ place }) => place))]
  const all = workedBetween(from, to, hours)
  const overlaps: StopStudy['overlaps'][number][] = []
  const places: PlaceTime[] = []
  const times: StopTimes[] = []
  for (const place of names) {
    const own = inside.filter((one) => one.place === place).toSorted((a, b) => a.start - b.start)
    const joined = union(own, from, to)
    const down = joined.reduce((sum, [a, b]) => sum + workedBetween(a, b, hours), 0)
    let last = own[0]!
    for (const one of own.slice(1)) {
      if (one.start < (last.end ?? to)) overlaps.push({ place, lines: [last.line, one.line] })
      if ((one.end ?? to) > (last.end ?? to)) last = one
    }
    const exposure = clock === 'operating' ? all - down : all
    const causes = by === 'place' ? [''] : [...new Set(own.map(({ cause }) => cause))]
    for (const cause of causes) {
      const mine = own.filter((one) => by === 'place' || one.cause === cause)
      // of one cause an entry that begins before the last one is over tells of the same stop
      let until = Number.NEGATIVE_INFINITY
      const single = mine.filter((one) => {
        const apart = one.start >= until
        until = Math.max(until, one.end ?? to)
        return apart
      })
      for (const short of [false, true]) {
        const part = single.filter((one) => (one.end !== null && one.end - one.start < shortBelow) === short)
        if (part.length > 0) times.push(judged({ place, cause, short, part, exposure, lasting, seed, from }))
      }
    }
    places.push(placeTime(place, all, down, own, lasting, exposure))
  }
  return { from, to, endsGuessed: request.from === undefined || request.to === undefined, clock, times, places, overlaps, outside }
}

/** Stretches that stops cover together. */
function union(stops: readonly Stop[], from: number, to: number): [number, number][] {
  const found: [number, number][] = []
  for (const { start, end } of stops) {
    const [a, b] = [Math.max(from, start), Math.min(to, end ?? to)]
    const last = found.at(-1)
    if (last !== undefined && a <= last[1]) last[1] = Math.max(last[1], b)
    else found.push([a, b])
  }
  return found
}

interface Part {
  readonly place: string
  readonly cause: string
  readonly short: boolean
  readonly part: readonly Stop[]
  readonly exposure: number
  readonly lasting: (stop: Stop) => number
  readonly seed: string
  readonly from: number
}

function judged({ place, cause, short, part, exposure, lasting, seed, from }: Part): StopTimes {
  // a stop that was there already when the log began tells nothing of the time between
  const begun = part.filter(({ start }) => start >= from)
  const n = begun.length
  const over = part.filter(({ end }) => end !== null)
  const repairs = over.map((one) => one.end! - one.start)
  const open = part.length - over.length
  const waited = part.filter(({ end }) => end === null).reduce((sum, one) => sum + lasting(one), 0)
  const sum = repairs.reduce((all, one) => all + one, 0)
  // total time over ended repairs: what has lasted so far counts as well
  const repair = repairs.length === 0 ? null : (sum + waited) / repairs.length
  const usual = usualStop(place, short)
  const few = n < STOPS_FEW
  const choice =
    repairs.length >= CURVE_FROM && open === 0 && new Set(repairs).size > 1
      ? chosenCurve(repairs, null, streamOf(seed, 0, 'bootstrap', `stop ${place} ${cause}`), 199)
      : null
  const spread = repairs.length >= 5 && repair !== null ? Tally.of(repairs).sd! / Tally.of(repairs).mean! : usual.cv
  const between = n === 0 ? null : exposure / n
  return {
    place,
    cause,
    short,
    stops: part,
    n,
    exposure,
    between,
    betweenLow: (2 * exposure) / chiSquareQuantile(0.975, 2 * n + 2),
    betweenHigh: n === 0 ? null : (2 * exposure) / chiSquareQuantile(0.025, 2 * n),
    repairs,
    open,
    repair,
    choice,
    after: { kind: 'exponential', mean: few ? usual.between : between! },
    lasts:
      repair === null || few
        ? { kind: 'lognormal', mean: usual.repair, cv: usual.cv }
        : (choice?.distribution ?? lognormal(repair, spread)),
    standsIn: few
      ? `${n} stop${n === 1 ? '' : 's'} of it: too few to tell; ${usual.says} stands in (common practice, no source)`
      : repairs.length < 5
        ? 'too few repairs for their spread; 66 % stands in (common practice, no source)'
        : '',
  }
}

const lognormal = (mean: number, cv: number): Distribution =>
  cv > 1e-9 ? { kind: 'lognormal', mean, cv } : { kind: 'constant', value: mean }

/** Availability of a place, and where it lies in the long run: the ratio of a gamma-like mean repair to an exponential time between. */
function placeTime(
  place: string,
  seconds: number,
  down: number,
  own: readonly Stop[],
  lasting: (stop: Stop) => number,
  exposure: number,
): PlaceTime {
  const availability = seconds > 0 ? 1 - down / seconds : 1
  const repairs = own.map(lasting).filter((one) => one > 0)
  const n = repairs.length
  if (n < STOPS_FEW || !(exposure > 0)) return { place, seconds, down, availability, low: null, high: null }
  const { mean, sd } = Tally.of(repairs)
  const cv = Math.max(0.1, sd! / mean!)
  const ratio = mean! / (exposure / n)
  // degrees of freedom: 2n/cv² of the mean repair, 2n of the mean time between
  const above = fQuantile(0.975, (2 * n) / cv ** 2, 2 * n)
  const below = fQuantile(0.025, (2 * n) / cv ** 2, 2 * n)
  return { place, seconds, down, availability, low: 1 / (1 + ratio * above), high: 1 / (1 + ratio * below) }
}
