/** Figures of a promise: takt, efficiency, balance loss, OEE of the constraint, ramp-up. */
import {
  balanceLoss,
  between,
  type Effectiveness,
  learningFactor,
  lineEfficiency,
  overallEffectiveness,
  type PromiseSection,
  rampUp,
  type RampWeek,
  takt,
} from '@loopwright/decide'
import { lawOrNull, mixShares, workingSeconds } from '@loopwright/line/bounds'
import type { Scenario } from '@loopwright/scenario'
import { distributionMean } from '@loopwright/stats'
import type { ForecastResult } from '../forecast/forecastOf.ts'

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
  /** of the constraint; null: it is not known */
  readonly constraint: {
    readonly station: string
    readonly effectiveness: Effectiveness
    readonly starvedShare: number
    readonly blockedShare: number
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
  return line.stations.map(({ unload, load, work }) =>
    [...(unload ?? []), ...(load ?? []), ...(work ?? [])].reduce(
      (sum, { seconds }) =>
        sum + seconds.reduce((all, time, variant) => all + (time === null ? 0 : shares[variant]! * distributionMean(time)), 0),
      0,
    ),
  )
}

/**
 * Takt, efficiency, balance loss, OEE of the constraint, and the ramp-up.
 *
 * @example promiseOf(promised).takt // => 84.375
 */
export function promiseOf({ scenario, section, forecast, slower }: PromiseRuns): PromiseResult {
  const { line, plan } = scenario
  const found = lawOrNull(line)
  const netSeconds = workingSeconds(line)
  const count = forecast.sweep.counts[0]!
  const made = count.units.reduce((sum, one) => sum + one, 0) / Math.max(1, count.units.length)
  const work = workSeconds(scenario)
  const most = count.stations.reduce(
    (best, station, index) => (station.shares.working > count.stations[best]!.shares.working ? index : best),
    0,
  )
  const index = found?.constraintStation ?? most
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
                delay:
                  windowSeconds *
                  (shares.exchanging +
                    shares.starved +
                    shares.blocked +
                    shares['waiting for operator'] +
                    shares['waiting for product'] +
                    shares['waiting for receiver']),
                down: windowSeconds * shares.stopped,
              },
              work[index]!,
              made,
              made,
            ),
            starvedShare: shares.starved,
            blockedShare: shares.blocked,
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

/** Of all shifts of a week, between the factors that were simulated. */
function weekUnits(slower: PromiseRuns['slower'], factor: number, { daysPerWeek, shiftsPerDay }: PromiseSection): number {
  const points = slower.map((one) => [one.factor, one.mean] as const)
  return Math.max(0, between(points, factor)) * daysPerWeek * shiftsPerDay
}

/** What nine of ten weeks make at least, as a share of the mean; without weeks that of shifts. */
function nineOfTen({ shift, week }: ForecastResult): number {
  const of = week.p10 !== null && week.mean !== null && week.units.length >= WEEKS_LEAST ? week : shift
  return of.p10 === null || of.mean === null || of.mean.mean === 0 ? 1 : of.p10.point / of.mean.mean
}

/** fewer weeks say nothing of one in ten */
const WEEKS_LEAST = 20

/**
 * How many times the standard the first unit takes people who have to learn.
 *
 * @example firstFactor({ of: 0, daysPerWeek: 5, shiftsPerDay: 2, until: '', learning: null }) // => 1
 */
export const firstFactor = ({ learning }: PromiseSection): number => (learning === null ? 1 : learningFactor(learning, 1))

/**
 * A line that was simulated with longer work, as a point of the ramp-up.
 *
 * @example slowerPoint({ factor: 1.2, units: [300, 310] }) // => { factor: 1.2, mean: 305 }
 */
export function slowerPoint({
  factor,
  units,
}: {
  readonly factor: number
  readonly units: readonly number[]
}): PromiseRuns['slower'][number] {
  return { factor, mean: units.reduce((sum, one) => sum + one, 0) / units.length }
}
