/** All replications of one number of carriers, as they come in, and what they tell together. */
import { type ByCarrierState, CARRIER_STATES, type LineSpec, STATION_STATES, ZONE_STATES } from '@loopwright/line'
import { type Law, lawTerms, windowSecondsOf } from '@loopwright/line/bounds'
import {
  binomialEstimate,
  type BinomialEstimate,
  certainVerdict,
  type ChanceVerdict,
  chanceVerdict,
  type OutputInterval,
  outputInterval,
  quantileEstimate,
  tQuantile,
  windowInterval,
} from '@loopwright/stats'
import type { ShownMean } from '@loopwright/stats/worlds'
import type { RunUse } from '../controls/runUse.ts'
import { byState } from '../runs/byState.ts'
import { lineHasChance } from '../runs/lineChance.ts'
import { RowTally } from './rowTally.ts'
import { END_REASONS, type RowLayout } from '../runs/runRow.ts'
import type { MovingRuns, StationShares, SweepCount, ZoneShares } from './sweepResult.ts'

const GRIDLOCK = END_REASONS.indexOf('gridlock')
const OUT_OF_PRODUCTS = END_REASONS.indexOf('out of products')

export class CountStudy {
  readonly carriers: number
  readonly layout: RowLayout
  readonly tally: RowTally
  /** output per window, by replication */
  readonly units: number[] = []
  /** by replication: it ended in gridlock */
  readonly stoodStill: boolean[] = []
  gridlocks = 0
  /** the first replication that stood still; infinite: none did */
  firstGridlock = Number.POSITIVE_INFINITY
  outOfProducts = 0

  /** by replication: units in each hour of the window */
  readonly hours: Float64Array[] = []

  /** by replication: what it used of its streams; empty where nobody asks */
  readonly uses: RunUse[] = []

  /**
   * @param useOf  reads what a run used; default: it is not wanted
   */
  constructor(carriers: number, layout: RowLayout, useOf: ((row: Float64Array) => RunUse) | null = null) {
    this.carriers = carriers
    this.layout = layout
    this.tally = new RowTally(layout.length, (row) => {
      this.units.push(row[layout.units]!)
      this.hours.push(row.slice(layout.outputByHour, layout.outputByHour + layout.hours))
      this.stoodStill.push(row[layout.end] === GRIDLOCK)
      if (row[layout.end] === GRIDLOCK) {
        this.gridlocks += 1
        this.firstGridlock = Math.min(this.firstGridlock, this.units.length - 1)
      }
      if (row[layout.end] === OUT_OF_PRODUCTS) this.outOfProducts += 1
      if (useOf !== null) this.uses.push(useOf(row))
    })
  }

  /** Takes the rows of consecutive replications, from `from` on. */
  add(from: number, rows: readonly Float64Array[]): void {
    for (const [index, row] of rows.entries()) this.tally.add(from + index, row)
  }

  /** Half of the 95 % interval of the mean output, over the mean; null below 2 replications; 0 where nothing is made. */
  relativeHalfWidth(): number | null {
    const n = this.tally.taken
    if (n < 2) return null
    const mean = this.tally.means[this.layout.units]!
    const sd = Math.sqrt(this.tally.squares[this.layout.units]! / (n - 1))
    return mean > 0 ? (tQuantile(0.975, n - 1) * sd) / Math.sqrt(n) / mean : 0
  }

  /**
   * What the replications tell that are in.
   *
   * @param spec  the line, with any number of carriers
   * @param law   of that line; null: it has none
   * @param plan  units wanted per window; null: no plan
   * @param controlled  the mean without the luck of its worlds; default: not known
   */
  result(spec: LineSpec, law: Law | null, plan: number | null, controlled: ShownMean | null = null): SweepCount {
    const { units, tally, layout } = this
    const enough = units.length >= 2
    const chance = lineHasChance(spec)
    const windowSeconds = windowSecondsOf(spec)
    return {
      carriers: this.carriers,
      replications: units.length,
      units: [...units],
      mean: outputMean(units, chance),
      controlled,
      p10: enough ? quantileEstimate(units, 0.1) : null,
      p50: enough ? quantileEstimate(units, 0.5) : null,
      p90: enough ? quantileEstimate(units, 0.9) : null,
      meetsPlan: meetsPlan(units, plan),
      planVerdict: plan === null ? null : planVerdict(units, plan, chance),
      singleShift: enough ? windowInterval(units) : null,
      gridlocks: this.gridlocks,
      moving: this.gridlocks === 0 ? null : movingRuns(units.filter((_, replication) => !this.stoodStill[replication])),
      outOfProducts: this.outOfProducts,
      law: law === null ? null : lawTerms(law, this.carriers),
      stations: units.length === 0 ? [] : stationShares(spec, tally, layout, windowSeconds),
      zones: units.length === 0 ? [] : zoneShares(spec, tally, layout, windowSeconds),
      carrierShares: units.length === 0 ? null : carrierShares(this.carriers, tally, layout, windowSeconds),
      outputByHour: units.length === 0 ? [] : [...tally.means.subarray(layout.outputByHour, layout.outputByHour + layout.hours)],
      hourSpread: hourSpread(this.hours),
      stoppedBy: units.length === 0 ? [] : stops(tally, layout),
      lapSecondsMean: tally.mean(layout.lapSeconds),
      timeInLineSecondsMean: tally.mean(layout.timeInLineSeconds),
      productsInLineMean: tally.mean(layout.productsInLine),
    }
  }
}

/** fewer windows tell nothing of their tenths */
const SPREAD_FROM = 10

/** P10 and P90 of each hour, over the windows. */
function hourSpread(hours: readonly Float64Array[]): SweepCount['hourSpread'] {
  if (hours.length < SPREAD_FROM) return []
  return Array.from({ length: hours[0]!.length }, (_, hour) => {
    const units = hours.map((window) => window[hour]!)
    return { p10: quantileEstimate(units, 0.1).point, p90: quantileEstimate(units, 0.9).point }
  })
}

/**
 * Of one run where chance does not reach the line: there is no spread to be found. Null below 2 replications of any other line.
 *
 * @example outputMean([412, 398, 407, 415], true).mean // => 408
 */
export function outputMean(units: readonly number[], chance: boolean): OutputInterval | null {
  if (units.length >= 2) return outputInterval(units)
  if (chance || units.length === 0) return null
  return { ...outputInterval([units[0]!, units[0]!]), n: 1 }
}

/** Windows with output ≥ plan. */
export const metPlan = (units: readonly number[], plan: number): number => units.filter((made) => made >= plan).length

/**
 * Share of windows that meet the plan; null without a plan, or without a window.
 *
 * @example meetsPlan([412, 398, 407, 415], 400).share // => 0.75
 */
export function meetsPlan(units: readonly number[], plan: number | null): BinomialEstimate | null {
  return plan === null || units.length === 0 ? null : binomialEstimate(metPlan(units, plan), units.length)
}

/**
 * Whether nine of ten windows meet the plan, by a number of windows that was chosen before; null without a window.
 *
 * @example planVerdict([412, 398, 407, 415], 400, true).verdict // => 'open'
 */
export function planVerdict(units: readonly number[], plan: number, chance: boolean): ChanceVerdict | null {
  if (units.length === 0) return null
  return chance ? chanceVerdict(metPlan(units, plan), units.length) : certainVerdict(units[0]! >= plan)
}

const movingRuns = (units: readonly number[]): MovingRuns => ({
  replications: units.length,
  mean: units.length >= 2 ? outputInterval(units) : null,
  low: units.length === 0 ? null : Math.min(...units),
  high: units.length === 0 ? null : Math.max(...units),
})

const shares = <S extends string>(states: readonly S[], tally: RowTally, from: number, seconds: number): Readonly<Record<S, number>> =>
  byState(states, (place) => tally.means[from + place]! / seconds)

function stationShares(spec: LineSpec, tally: RowTally, layout: RowLayout, windowSeconds: number): StationShares[] {
  return spec.stations.map((station, index) => {
    const at = layout.station + index * layout.stationStride
    const longest = at + STATION_STATES.length
    return {
      name: station.name,
      title: station.title,
      shares: shares(STATION_STATES, tally, at, windowSeconds),
      longestBlockSecondsMean: tally.means[longest]!,
      stoppedBy: layout.causes
        .map((cause, column) => ({ cause, seconds: tally.means[longest + 1 + column]! }))
        .filter((stop) => stop.seconds > 0),
    }
  })
}

const zoneShares = (spec: LineSpec, tally: RowTally, layout: RowLayout, windowSeconds: number): ZoneShares[] =>
  spec.zones.map((zone, index) => {
    const at = layout.zone + index * layout.zoneStride
    return {
      name: zone.name,
      occupancyMean: tally.means[at + ZONE_STATES.length]!,
      shares: shares(ZONE_STATES, tally, at, windowSeconds),
    }
  })

const carrierShares = (carriers: number, tally: RowTally, layout: RowLayout, windowSeconds: number): ByCarrierState =>
  shares(CARRIER_STATES, tally, layout.carrierStates, carriers * windowSeconds)

const stops = (tally: RowTally, layout: RowLayout): SweepCount['stoppedBy'] =>
  layout.causes.map((cause, index) => ({
    cause,
    seconds: tally.means[layout.cause + 2 * index]!,
    count: tally.means[layout.cause + 2 * index + 1]!,
  }))
