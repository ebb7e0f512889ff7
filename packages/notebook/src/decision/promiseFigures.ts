/** Figures of a promise: takt, efficiency, balance loss, OEE of the constraint, ramp-up. */
import {
  balanceLoss,
  between,
  type Effectiveness,
  lineEfficiency,
  overallEffectiveness,
  type PromiseSection,
  rampUp,
  type RampWeek,
  takt,
} from '@loopwright/decide'
import type { TimeLoss } from '@loopwright/charts/decision'
import { lawOrNull, lineLimits, mixShares, workingSeconds } from '@loopwright/line/bounds'
import type { Scenario } from '@loopwright/scenario'
import { diagnose, type Diagnosis, type StationShares } from '@loopwright/study'
import { meanTaskSeconds } from '@loopwright/study/change'
import { meanOf } from '@loopwright/stats'
import { type ForecastResult, hasWeeks } from '../forecast/forecastOf.ts'
import { stopCauses } from '../study/stopCauses.ts'

/** What a promise is made of. */
export interface PromiseRuns {
  readonly name: string
  readonly scenario: Scenario
  readonly section: PromiseSection
  readonly crew: number | null
  readonly forecast: ForecastResult
  /** units per shift with all work so many times as long, ascending; the first is 1; empty: no ramp-up is told */
  readonly slower: readonly { readonly factor: number; readonly mean: number }[]
}

/** Figures of a promise. */
export interface PromiseResult {
  readonly kind: 'promise'
  readonly takt: number | null
  /** by mean times, of a single loop; else null */
  readonly lineEfficiency: number | null
  readonly balanceLoss: number | null
  /** of the station that limits, or that what limits is at; null: nothing is made */
  readonly constraint: {
    readonly station: string
    readonly effectiveness: Effectiveness
    readonly starvedShare: number
    readonly blockedShare: number
    /** seconds of a shift, breaks outside */
    readonly plannedSeconds: number
    /** where these go that do not produce */
    readonly losses: readonly TimeLoss[]
  } | null
  readonly ramp: readonly (RampWeek & { readonly low: number })[]
}

/**
 * Mean seconds of all work of each station, over the mix.
 *
 * @example workSeconds(promised.scenario).map((seconds) => Math.round(seconds)) // => [40, 60, 59, 59, 56, 62, 38]
 */
export function workSeconds({ line }: Pick<Scenario, 'line'>): number[] {
  const shares = mixShares(line.mix, line.variants.length)
  return line.stations.map((station) => meanTaskSeconds(station, shares))
}

/**
 * What limits the line of a promise, by its runs and the limits of its mean times; null: it stood still.
 *
 * @example limitOf(promised).limitedBy?.name // => 'S6 Tightness test'
 */
export function limitOf({ scenario: { line }, forecast }: Pick<PromiseRuns, 'scenario' | 'forecast'>): Diagnosis | null {
  const count = forecast.sweep.counts[0]!
  if (count.units.length === 0 || count.gridlocks > 0) return null
  const units = meanOf(count.units)
  return diagnose({ line, shares: count.stations.map(({ shares }) => shares), units, limits: lineLimits(line) })
}

/**
 * Something is made: asked before more is simulated.
 *
 * @param units  of each simulated shift
 * @throws RangeError  where nothing is made
 */
export function needsUnits(units: readonly number[]): void {
  if (units.length > 0 && units.every((made) => made === 0))
    throw new RangeError('the line makes nothing in the judged shift: there is nothing to promise. Are there products and carriers in it?')
}

/**
 * Takt, efficiency, balance loss, OEE of the constraint, and the ramp-up.
 *
 * @throws RangeError  where the line makes nothing
 * @example promiseOf(promised).takt // => 84.375
 */
export function promiseOf(runs: PromiseRuns): PromiseResult {
  const { scenario, section, forecast, slower } = runs
  const { line, plan } = scenario
  const found = lawOrNull(line)
  const netSeconds = workingSeconds(line)
  const count = forecast.sweep.counts[0]!
  const made = count.units.length === 0 ? 0 : meanOf(count.units)
  needsUnits(count.units)
  const work = workSeconds(scenario)
  const at = limitOf(runs)?.limitedBy?.stations ?? []
  const index = busiest(count.stations, at.length > 0 ? at : [...count.stations.keys()])
  const station = count.stations[index]
  const windowSeconds = line.window.endSeconds - line.window.warmupSeconds
  const shares = station?.shares
  const week = section.learning
  return {
    kind: 'promise',
    takt: plan === null ? null : takt(netSeconds, plan.unitsPerWindow),
    lineEfficiency: found === null ? null : lineEfficiency(made, netSeconds, found.exchangeSeconds),
    balanceLoss: found === null || work.length === 0 ? null : balanceLoss(work, found.exchangeSeconds),
    constraint:
      station === undefined || shares === undefined
        ? null
        : {
            station: line.stations[index]!.title,
            effectiveness: overallEffectiveness(
              {
                production: windowSeconds * (shares.working + shares.handling),
                delay: windowSeconds * WAITS.reduce((sum, state) => sum + shares[state], 0),
                down: windowSeconds * shares.stopped,
              },
              work[index]!,
              made,
              made,
            ),
            starvedShare: shares.starved,
            blockedShare: shares.blocked,
            plannedSeconds: windowSeconds * (1 - shares.break),
            losses: lossesOf(scenario, station, windowSeconds),
          },
    ramp:
      week === null || slower.length < 2
        ? []
        : rampUp(week, (factor) => weekUnits(slower, factor, section), week.weeks).map((one) => ({
            ...one,
            low: one.units * nineOfTen(forecast),
          })),
  }
}

/** The one that works most, the first of equals. */
const busiest = (stations: readonly StationShares[], of: readonly number[]): number =>
  of.reduce((best, index) => (stations[index]!.shares.working > stations[best]!.shares.working ? index : best), of[0] ?? 0)

/** states in which a station does not produce and no stop holds it */
const WAITS = ['exchanging', 'starved', 'blocked', 'waiting for operator', 'waiting for product', 'waiting for receiver'] as const

/** Time of a station that does not produce: states by their names, stopped time by its causes. */
function lossesOf(scenario: Scenario, { name, shares, stoppedBy }: StationShares, windowSeconds: number): TimeLoss[] {
  const waits = WAITS.map((state) => ({
    name: state === 'exchanging' ? 'exchanging carriers' : state,
    seconds: windowSeconds * shares[state],
  }))
  // stops may lie over each other and over breaks: what they take together is shared out by their lengths
  const stops = stopCauses(
    scenario,
    stoppedBy.filter(({ cause }) => cause !== 'break').map((stop) => ({ ...stop, count: 0 })),
  )
  const sum = stops.reduce((all, { seconds }) => all + seconds, 0)
  const stopped = windowSeconds * shares.stopped
  const own = new Set(scenario.stopEntries.filter(({ sources }) => sources.some(({ place }) => place === name)).map(({ title }) => title))
  const causes = stops.map(({ cause, seconds }) => ({
    name: own.has(cause) ? `stopped: ${cause}` : `stopped with others: ${cause}`,
    seconds: sum === 0 ? 0 : (stopped * seconds) / sum,
  }))
  return [...waits, ...causes].filter(({ seconds }) => seconds > 0)
}

/** Of all shifts of a week, between the factors that were simulated. */
export function weekUnits(slower: PromiseRuns['slower'], factor: number, { daysPerWeek, shiftsPerDay }: PromiseSection): number {
  const points = slower.map((one) => [one.factor, one.mean] as const)
  return Math.max(0, between(points, factor)) * daysPerWeek * shiftsPerDay
}

/** What nine of ten weeks make at least, as a share of the mean; without weeks that of shifts. */
function nineOfTen(forecast: ForecastResult): number {
  const of = hasWeeks(forecast) ? forecast.week : forecast.shift
  return of.p10 === null || of.mean === null || of.mean.mean === 0 ? 1 : of.p10.point / of.mean.mean
}
