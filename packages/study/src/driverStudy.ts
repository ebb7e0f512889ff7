/** What drives the output: per cent more output for one per cent of each driver, in the same worlds; and what explains it. */
import { type Law, type LawTerms, type LineSpec, lawOrNull, lawTerms, STATION_STATES } from '@loopwright/line'
import {
  type Arrows,
  arrows,
  elasticity,
  limitingParts,
  type MeanInterval,
  meanInterval,
  type PairedDifference,
  pairedDifference,
} from '@loopwright/stats'
import { type DriverKind, type DriverOptions, driversOf, TIME_KINDS } from './drivers.ts'
import { ENGINE_VERSION } from './engineVersion.ts'
import { inCommon, type LineRows, type Runner, unitsOf } from './runner.ts'
import { withCarriers } from './withCarriers.ts'

/** share by which each driver is changed, up and down */
export const STEP = 0.05

export interface DriverRequest extends DriverOptions {
  readonly seed: string
  /** ≥ 2 */
  readonly replications: number
}

export interface DriverResult {
  readonly kind: 'drivers'
  readonly engineVersion: string
  readonly seed: string
  readonly replications: number
  /** stopped before all were done */
  readonly partial: boolean
  readonly step: number
  readonly carriers: number
  /** of the line as it is, units per window */
  readonly base: MeanInterval | null
  /** the largest gain first; empty below 2 replications */
  readonly drivers: readonly DriverEffect[]
  /** places in `drivers`: what limits the line, the largest first; several where their intervals overlap */
  readonly limits: readonly number[]
  /** units per window, in the same worlds; null where the count cannot be */
  readonly oneCarrierMore: PairedDifference | null
  readonly oneCarrierLess: PairedDifference | null
  readonly explanation: Explanation | null
  readonly law: Law | null
  readonly lawTerms: LawTerms | null
}

export interface DriverEffect {
  readonly kind: DriverKind
  readonly name: string
  readonly station: number | null
  readonly lessIsBetter: boolean
  /** per cent more output for one per cent less (of what more is better of: more) */
  readonly elasticity: MeanInterval
  /** units per window that 5 % of it bring, mean */
  readonly unitsOfStep: number
}

/** Shares of the window and what they point at: an explanation, no verdict. */
export interface Explanation {
  /** in the order of flow, from the first load station on */
  readonly stations: readonly { readonly station: number; readonly blockedShare: number; readonly starvedShare: number }[]
  /** stations by place in the list above */
  readonly arrows: Arrows
  /** index of the station that the arrows point at, the worst first; null: none */
  readonly candidate: number | null
}

/**
 * Changes each driver by ± 5 % in the same worlds: times are scaled, never drawn anew.
 *
 * @throws RangeError  if there are fewer than 2 replications, or a replication makes nothing
 * @see Kuo, Lim & Meerkov, Bottlenecks in serial production lines: a system-theoretic approach (1996), for the arrows beside it; rules from memory
 */
export async function driverStudy(line: LineSpec, request: DriverRequest, runner: Runner): Promise<DriverResult> {
  const { seed, replications } = request
  if (!Number.isInteger(replications) || replications < 2) throw new RangeError(`drivers need at least 2 replications, not ${replications}`)
  const drivers = driversOf(line, request)
  const counts = [1, -1].map((step) => countOrNull(line, line.carriers.count + step))
  const lines = [line, ...counts.filter((each) => each !== null), ...drivers.flatMap(({ scaled }) => [scaled(1 - STEP), scaled(1 + STEP)])]
  runner.expect(lines.length * replications)
  const ran = inCommon(await runner.run(lines, { seed, from: 0, to: replications }))
  const units = ran.map(unitsOf)
  const base = units[0]!
  const n = base.length
  const nothing = base.findIndex((made) => made <= 0)
  if (nothing >= 0) {
    throw new RangeError(
      `replication ${nothing} makes nothing, so that there is no per cent of it: look at why it stands still (loopwright run)`,
    )
  }
  const lineLaw = lawOrNull(line)
  const head = {
    kind: 'drivers',
    engineVersion: ENGINE_VERSION,
    seed,
    replications,
    partial: n < replications,
    step: STEP,
    carriers: line.carriers.count,
    law: lineLaw,
    lawTerms: lineLaw === null ? null : lawTerms(lineLaw, line.carriers.count),
  } as const
  if (n < 2) return { ...head, base: null, drivers: [], limits: [], oneCarrierMore: null, oneCarrierLess: null, explanation: null }
  const first = lines.length - 2 * drivers.length
  const effects = drivers
    .map(({ kind, name, station, lessIsBetter }, index): DriverEffect => {
      const [less, more] = [units[first + 2 * index]!, units[first + 2 * index + 1]!]
      const [faster, slower] = lessIsBetter ? [less, more] : [more, less]
      const gain = faster.reduce((sum, made, j) => sum + (made - slower[j]!) / 2, 0) / n
      return { kind, name, station, lessIsBetter, elasticity: elasticity({ base, faster, slower }, STEP), unitsOfStep: gain }
    })
    .sort((a, b) => b.elasticity.mean - a.elasticity.mean)
  let at = 0
  const [more, less] = counts.map((each) => (each === null ? null : pairedDifference(units[++at]!, base)))
  return {
    ...head,
    base: meanInterval(base),
    drivers: effects,
    limits: limitsOf(effects),
    oneCarrierMore: more!,
    oneCarrierLess: less!,
    explanation: explained(line, ran[0]!),
  }
}

/** What limits the line is some time it takes: of those the largest, and all that cannot be told from it. */
function limitsOf(effects: readonly DriverEffect[]): number[] {
  const times = [...effects.keys()].filter((index) => TIME_KINDS.includes(effects[index]!.kind))
  return limitingParts(times.map((index) => effects[index]!.elasticity)).map((place) => times[place]!)
}

function countOrNull(line: LineSpec, count: number): LineSpec | null {
  try {
    return withCarriers(line, count)
  } catch (error) {
    if (error instanceof RangeError) return null
    throw error
  }
}

function explained(line: LineSpec, { layout, rows }: LineRows): Explanation | null {
  if (line.stations.length < 2) return null
  const zones = line.zones.length
  const start = line.stations.find(({ load }) => load !== null)?.zone ?? 0
  const order = [...line.stations.keys()].sort(
    (a, b) => ((line.stations[a]!.zone - start + zones) % zones) - ((line.stations[b]!.zone - start + zones) % zones),
  )
  const windowSeconds = line.window.endSeconds - line.window.warmupSeconds
  const share = (row: Float64Array, station: number, state: (typeof STATION_STATES)[number]): number =>
    Math.min(1, row[layout.station + station * layout.stationStride + STATION_STATES.indexOf(state)]! / windowSeconds)
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length
  const blocked = order.map((station) => mean(rows.map((row) => share(row, station, 'blocked'))))
  const starved = order.map((station) => mean(rows.map((row) => share(row, station, 'starved'))))
  const errors = order.map((station, place) => {
    const next = order[(place + 1) % order.length]!
    const { sd, n } = meanInterval(rows.map((row) => share(row, station, 'blocked') - share(row, next, 'starved')))
    return sd / Math.sqrt(n)
  })
  const found = arrows(blocked, starved, true, errors)
  const worst = found.candidates[0]
  return {
    stations: order.map((station, place) => ({ station, blockedShare: blocked[place]!, starvedShare: starved[place]! })),
    arrows: found,
    candidate: worst === undefined ? null : order[worst.station]!,
  }
}
