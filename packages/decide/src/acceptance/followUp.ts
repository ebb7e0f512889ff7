/** Counts of real weeks against the forecast: week by week, all together, and station by station. */
import { normalCdf } from '@loopwright/stats/special'
import { sampleQuantile, stream, Tally } from '@loopwright/stats'

/** One real week. */
export interface RealWeek {
  readonly name: string
  readonly units: number
  readonly shifts: number
}

/** A week beside what the forecast expects of so many shifts. */
export interface JudgedWeek extends RealWeek {
  readonly expected: number
  readonly low: number
  readonly high: number
  readonly side: 'below' | 'within' | 'above'
}

/** Whether the promise still stands. */
export type PromiseState = 'still stands' | 'in doubt' | 'no longer stands' | 'too few weeks'

/** Real weeks against the forecast. */
export interface FollowUpResult {
  readonly weeks: readonly JudgedWeek[]
  /** units per shift: real, and of the forecast */
  readonly realMean: number
  readonly forecastMean: number
  /** real less forecast over forecast */
  readonly differenceShare: number
  /** chance of a mean so low or lower if the forecast holds; one-sided */
  readonly chance: number
  readonly state: PromiseState
  /** so many units would be as seldom as so few that break a promise: the forecast is too low */
  readonly above: boolean
}

/** band of a week */
const BAND = 0.9
const DRAWS = 2000
/** fewer say nothing */
const WEEKS_LEAST = 2
/** Below this chance the promise is in doubt. */
const DOUBT = 0.05
/** Below this chance it no longer stands. */
const BROKEN = 0.005

/**
 * Weeks against the forecast. The chance allows for what the simulation knows of the mean, and for how much shifts differ.
 *
 * @param weeks     each with whole units ≥ 0 and shifts ≥ 1
 * @param forecast  output of simulated shifts, at least 10
 * @param seed      names the draws of the bands
 * @throws RangeError  below 10 simulated shifts, where they make nothing, or for a week without shifts
 * @see normal approximation of a mean of many shifts; false alarm of "no longer stands": 1 in 200 a look (own rule, no source)
 * @example followUp([{ name: 'W1', units: 3300, shifts: 10 }, { name: 'W2', units: 3310, shifts: 10 }], [328, 330, 332, 329, 331, 330, 327, 333, 330, 330], '1').state // => 'still stands'
 */
export function followUp(weeks: readonly RealWeek[], forecast: readonly number[], seed: string): FollowUpResult {
  if (forecast.length < SHIFTS_LEAST)
    throw new RangeError(`weeks are set beside at least ${SHIFTS_LEAST} simulated shifts, not ${forecast.length}`)
  const odd = weeks.find(({ units, shifts }) => !(Number.isInteger(shifts) && shifts >= 1 && Number.isInteger(units) && units >= 0))
  if (odd !== undefined) throw new RangeError(`"${odd.name}": a week has whole units from 0 on and whole shifts from 1 on`)
  const tally = Tally.of(forecast)
  const [mean, sd] = [tally.mean!, tally.sd!]
  if (mean === 0) throw new RangeError('the model makes nothing in the judged shift: there is no forecast to set weeks beside')
  const shifts = weeks.reduce((sum, week) => sum + week.shifts, 0)
  const units = weeks.reduce((sum, week) => sum + week.units, 0)
  const realMean = shifts === 0 ? 0 : units / shifts
  const error = sd * Math.sqrt(1 / Math.max(1, shifts) + 1 / forecast.length)
  const chance = error === 0 ? (realMean < mean ? 0 : 1) : normalCdf((realMean - mean) / error)
  const bands = new Map([...new Set(weeks.map((week) => week.shifts))].map((count) => [count, bandOf(count, forecast, seed)]))
  return {
    weeks: weeks.map((week) => judged(week, bands.get(week.shifts)!, mean)),
    realMean,
    forecastMean: mean,
    differenceShare: mean === 0 ? 0 : realMean / mean - 1,
    chance,
    above: weeks.length >= WEEKS_LEAST && chance > 1 - BROKEN && realMean > mean,
    state:
      weeks.length < WEEKS_LEAST ? 'too few weeks' : chance < BROKEN ? 'no longer stands' : chance < DOUBT ? 'in doubt' : 'still stands',
  }
}

/** Beside fewer simulated shifts no week is set. */
export const SHIFTS_LEAST = 10

/** Where nine of ten sums of so many shifts lie, drawn from those simulated: the same for each week of as many. */
function bandOf(shifts: number, forecast: readonly number[], seed: string): { readonly low: number; readonly high: number } {
  const draw = stream(seed, 0, `bootstrap/week ${shifts}`)
  const sums = Array.from({ length: DRAWS }, () => {
    let sum = 0
    for (let shift = 0; shift < shifts; shift++) sum += forecast[Math.floor(draw() * forecast.length)]!
    return sum
  })
  return { low: sampleQuantile(sums, (1 - BAND) / 2), high: sampleQuantile(sums, (1 + BAND) / 2) }
}

function judged(week: RealWeek, { low, high }: { readonly low: number; readonly high: number }, mean: number): JudgedWeek {
  return { ...week, expected: mean * week.shifts, low, high, side: week.units < low ? 'below' : week.units > high ? 'above' : 'within' }
}

/** Mean work of a station, measured. */
export interface MeasuredStation {
  readonly station: string
  /** mean seconds of its tasks a unit, > 0 */
  readonly seconds: number
  readonly n: number
  /** standard deviation of single cycles, ≥ 0 */
  readonly sd: number
}

/** A station beside the model. */
export interface StationDeviation extends MeasuredStation {
  readonly modelSeconds: number
  /** measured over model */
  readonly ratio: number
  /** deviation in standard errors of the measured mean; null: no spread was measured */
  readonly standardErrors: number | null
  /** shown: more than 3 standard errors, and more than 2 % */
  readonly differs: boolean
  /** cycles that would know the mean to ± 5 % */
  readonly cyclesFor5: number
}

/** a difference that matters: standard errors, and share */
const SHOWN = { errors: 3, share: 0.02 }
/** z of 95 % */
const Z = 1.959_963_984_540_054

/**
 * Stations whose measured work is not that of the model, the largest deviation first: what to measure again.
 *
 * @param model  mean seconds of each station, by name
 * @throws RangeError  for a station that the model does not have, or times that cannot be
 * @example stationDeviations([{ station: 'S6', seconds: 68, n: 30, sd: 3 }], new Map([['S6', 61.8]]))[0].differs // => true
 */
export function stationDeviations(measured: readonly MeasuredStation[], model: ReadonlyMap<string, number>): StationDeviation[] {
  const found = measured.map((one): StationDeviation => {
    const modelSeconds = model.get(one.station)
    if (modelSeconds === undefined || modelSeconds === 0) throw new RangeError(`the model has no work at a station "${one.station}"`)
    if (!(one.seconds > 0 && one.n >= 1 && one.sd >= 0))
      throw new RangeError(`"${one.station}": seconds above 0, n from 1 on, sd from 0 on`)
    const error = one.sd / Math.sqrt(one.n)
    const standardErrors = error === 0 ? null : (one.seconds - modelSeconds) / error
    const ratio = one.seconds / modelSeconds
    const differs = Math.abs(ratio - 1) > SHOWN.share && (standardErrors === null || Math.abs(standardErrors) > SHOWN.errors)
    return {
      ...one,
      modelSeconds,
      ratio,
      standardErrors,
      differs,
      cyclesFor5: Math.max(2, Math.ceil(((Z * one.sd) / (0.05 * one.seconds)) ** 2)),
    }
  })
  return found.toSorted((a, b) => Math.abs(b.ratio - 1) - Math.abs(a.ratio - 1))
}
