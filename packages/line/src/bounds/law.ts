/** The law of a closed loop: what limits it with few, with enough and with many carriers. (MODEL.md §12) */
import { completeLine, type GivenLine } from '../builder/givenLine.ts'
import { isPlainLoop } from '../build/graph.ts'
import { REST } from '../moves/motion.ts'
import { distributionMean } from '@loopwright/stats'
import type { MixSpec, TaskSpec } from '../spec.ts'
import { type DutyLaps, dutyLaps } from './dutyLaps.ts'
import { type EstimateReason, estimateReasons } from './exactness.ts'
import { loneLap } from './loneLap.ts'
import { pathTimes } from './pathTimes.ts'
import { changeSeconds } from './transferChange.ts'

/** What the rate of one closed loop obeys: lap, exchanges, holes; seconds and counts. (MODEL.md §12) */
export interface Law {
  /** T0, seconds: lap of one carrier alone, mean over the mix */
  readonly lapSeconds: number
  /** C_b, seconds: the slowest exchange */
  readonly exchangeSeconds: number
  /** index of the zone with the slowest exchange, the lowest of equals */
  readonly constraintZone: number
  /** index of the station there; null: none */
  readonly constraintStation: number | null
  /** W, seconds: lap of one hole, the sum of the clear times of the storage zones */
  readonly holeLapSeconds: number
  /** M, count: zones that are no exit-clear transfers */
  readonly storageZones: number
  /** products taken off per carrier and lap, mean over the mix; usually 1 */
  readonly unitsPerLap: number
  /** N_lo, count: from here on the station limits, not the carriers; null where no exchange takes time */
  readonly carriersLow: number | null
  /** N_hi, count: up to here; beyond, holes are short */
  readonly carriersHigh: number | null
  /** share of each variant, summing to 1; of a pattern or list: as often as it stands there */
  readonly variantShares: readonly number[]
  /** what the slowest exchange is made of, and every other: one entry per zone */
  readonly exchanges: readonly Exchange[]
  /** true: holds exactly; false: an estimate */
  readonly exact: boolean
  readonly estimateReasons: readonly EstimateReason[]
}

/** From one carrier's start into a zone to the instant at which the next may start into it; mean seconds, from rest. */
export interface Exchange {
  readonly moveSeconds: number
  readonly workSeconds: number
  readonly releaseSeconds: number
  /** transfer change to the way out */
  readonly changeSeconds: number
  readonly clearSeconds: number
  /** transfer change back to the way in */
  readonly changeBackSeconds: number
  /** the sum */
  readonly seconds: number
}

/**
 * The terms of the law and its knees: exact for constant times without ramps, else an estimate that says why.
 *
 * @param given  one closed loop; breakdowns and breaks are left out of the terms
 * @throws RangeError  if the paths are not one closed loop, or a lap takes no time
 * @see Baccelli, Cohen, Olsder & Quadrat, Synchronization and Linearity (1992): maximum cycle ratio
 * @example law(line).exchangeSeconds // => 24
 */
export function law(given: GivenLine): Law {
  const spec = completeLine(given)
  const zones = spec.zones.length
  if (!isPlainLoop(spec)) {
    throw new RangeError('the law is known for one closed loop: path i leaves zone i for the next zone')
  }
  const times = pathTimes(spec)
  const variantShares = mixShares(spec.mix, spec.variants.length)
  const made = variantShares.flatMap((share, variant) => (share > 0 ? [{ share, laps: dutyLaps(spec, variant) }] : []))
  const mean = (of: (laps: DutyLaps) => number): number => made.reduce((sum, { share, laps }) => sum + share * of(laps), 0)
  const stays = new Map(made.map(({ laps }) => [laps, staysByZone(zones, laps)]))
  const exchanges = spec.zones.map((_, zone): Exchange => {
    const change = changeSeconds(spec, zone)
    const stay = (of: 'workSeconds' | 'releaseSeconds'): number => mean((laps) => stays.get(laps)![of][zone]! / laps.laps)
    const parts = {
      moveSeconds: times[(zone + zones - 1) % zones]!.move[2 * REST + REST]!,
      workSeconds: stay('workSeconds'),
      releaseSeconds: stay('releaseSeconds'),
      changeSeconds: change?.out ?? 0,
      clearSeconds: times[zone]!.clear[REST]!,
      changeBackSeconds: change?.back ?? 0,
    }
    return { ...parts, seconds: Object.values(parts).reduce((sum, part) => sum + part, 0) }
  })
  const storage = exchanges.filter((_, zone) => spec.zones[zone]!.transfer?.enterOnlyIfExitClear !== true)
  const lapSeconds = mean((laps) => loneLap(spec, times, laps))
  if (lapSeconds <= 0) throw new RangeError('a lap takes no time: give the moves or the work a time')
  const exchangeSeconds = Math.max(...exchanges.map((exchange) => exchange.seconds))
  const constraintZone = exchanges.findIndex((exchange) => exchange.seconds === exchangeSeconds)
  const station = spec.stations.findIndex((one) => one.zone === constraintZone)
  const holeLapSeconds = storage.reduce((sum, exchange) => sum + exchange.clearSeconds + exchange.changeBackSeconds, 0)
  const reasons = estimateReasons(
    spec,
    made.map((one) => one.laps),
  )
  return {
    lapSeconds,
    exchangeSeconds,
    constraintZone,
    constraintStation: station < 0 ? null : station,
    holeLapSeconds,
    storageZones: storage.length,
    unitsPerLap: mean((laps) => laps.units / laps.laps),
    carriersLow: exchangeSeconds > 0 ? Math.ceil(knee(lapSeconds / exchangeSeconds)) : null,
    carriersHigh: exchangeSeconds > 0 ? Math.floor(knee(storage.length - holeLapSeconds / exchangeSeconds)) : null,
    variantShares,
    exchanges,
    exact: reasons.length === 0,
    estimateReasons: reasons,
  }
}

/** Seconds of all visits to each zone. */
function staysByZone(zones: number, { visits }: DutyLaps): { readonly workSeconds: Float64Array; readonly releaseSeconds: Float64Array } {
  const sums = { workSeconds: new Float64Array(zones), releaseSeconds: new Float64Array(zones) }
  for (const { zone, workSeconds, releaseSeconds } of visits) {
    sums.workSeconds[zone]! += workSeconds
    sums.releaseSeconds[zone]! += releaseSeconds
  }
  return sums
}

/**
 * The law where there is one; null: the line is no single closed loop, of which nothing so short is known.
 *
 * @example lawOrNull(line)?.carriersLow // => 3
 */
export function lawOrNull(given: GivenLine): Law | null {
  return isPlainLoop(given) ? law(given) : null
}

/** A knee that misses a whole number by rounding alone is that number. */
const knee = (carriers: number): number => (Math.abs(carriers - Math.round(carriers)) < 1e-9 ? Math.round(carriers) : carriers)

/**
 * The share of each variant of a mix, 0 … 1, by index; they sum to 1.
 *
 * @example mixShares({ kind: 'pattern', sequence: [0, 0, 1] }, 2) // => [0.6666666666666666, 0.3333333333333333]
 */
export function mixShares(mix: MixSpec, variants: number): number[] {
  const counts = mix.kind === 'random' || mix.kind === 'levelled' ? [...mix.shares] : new Array<number>(variants).fill(0)
  if (mix.kind === 'pattern' || mix.kind === 'list') for (const variant of mix.sequence) counts[variant]! += 1
  const total = counts.reduce((sum, count) => sum + count, 0)
  return counts.map((count) => count / total)
}

/**
 * Mean seconds of a task over a mix; a variant without it counts 0 s.
 *
 * @param shares  by variant, summing to 1
 * @example taskMean(line.stations[1].work[0], [1]) // => 20
 */
export function taskMean({ seconds }: Pick<TaskSpec, 'seconds'>, shares: readonly number[]): number {
  return seconds.reduce((sum, time, variant) => sum + (time === null ? 0 : (shares[variant] ?? 0) * distributionMean(time)), 0)
}
