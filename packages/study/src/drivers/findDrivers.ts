/** What drives the output: per cent more output for one per cent of each driver, in the same worlds; and what explains it. */
import { type ByStationState, completeLine, type GivenLine, isPlainLoop, type LineSpec } from '@loopwright/line'
import { type Law, lawOrNull, lawTerms, type LawTerms } from '@loopwright/line/bounds'
import { meanInterval, type OutputInterval, outputInterval } from '@loopwright/stats'
import { pairedDifference, type PairedDifference } from '@loopwright/stats/worlds'
import { arrows, type Arrows, elasticity, limitingParts } from '@loopwright/stats/procedures'
import { checkReplications } from '../runs/asked.ts'
import { type Diagnosis, diagnose } from './diagnosis.ts'
import type { DriverEffect, WholeEffect } from './driverEffect.ts'
import { type DriverOptions, driversOf } from './drivers.ts'
import { ENGINE_VERSION } from '../runs/engineVersion.ts'
import { workOfLines } from '../runs/openPool.ts'
import { endedBy, inCommon, type LineRows, unitsOf, withRunner } from '../runs/runner.ts'
import type { StudyOptions } from '../runs/studyOptions.ts'
import { shareIn, type StateShares, stateShares } from './stationStates.ts'
import { wholeChanges } from '../change/wholeChanges.ts'

/** share by which each driver is changed, up and down */
const STEP = 0.05

/** What a study of drivers is asked. */
export interface DriverRequest extends DriverOptions {
  /** ≥ 2 */
  readonly replications: number
}

/** What moves the output, what limits the line, and by what that is known. */
export interface DriverResult {
  readonly kind: 'drivers'
  readonly engineVersion: string
  readonly seed: string
  readonly replications: number
  /** stopped before all were done */
  readonly partial: boolean
  readonly step: number
  readonly carriers: number
  /** replications in which the line as it stands ended in gridlock, and out of products */
  readonly gridlocks: number
  readonly outOfProducts: number
  /** of the line as it is, units per window */
  readonly base: OutputInterval | null
  /** the largest gain first; empty below 2 replications */
  readonly drivers: readonly DriverEffect[]
  /** places in `drivers`: what counts most, the largest first; several where their intervals overlap; empty where nothing is shown to count */
  readonly limits: readonly number[]
  /** units per window, in the same worlds; null where the count cannot be */
  readonly oneCarrierMore: PairedDifference | null
  readonly oneCarrierLess: PairedDifference | null
  /** an operator, a carrier, a repair crew more or fewer: the largest gain first; empty below 2 replications */
  readonly wholeChanges: readonly WholeEffect[]
  /** what limits the line, by all that is known of it; null below 2 replications */
  readonly diagnosis: Diagnosis | null
  readonly explanation: Explanation | null
  readonly law: Law | null
  readonly lawTerms: LawTerms | null
}

/** Shares of the window and what they point at: an explanation, no verdict. */
export interface Explanation {
  /** in the order of flow, from the first load station on */
  readonly stations: readonly {
    readonly station: number
    readonly blockedShare: number
    readonly starvedShare: number
    /** all ten */
    readonly shares: ByStationState
  }[]
  /** stations by place in the list above; null: the line branches, so that there are no neighbours to point at */
  readonly arrows: Arrows | null
  /** index of the station that the arrows point at, the worst; null: none */
  readonly candidate: number | null
}

/**
 * Changes each driver by ± 5 % in the same worlds: times are scaled, never drawn anew; operators, carriers and repair crews by one.
 *
 * @throws RangeError  if there are fewer than 2 replications, or a replication makes nothing
 * @see Kuo, Lim & Meerkov, Bottlenecks in serial production lines: a system-theoretic approach (1996), for the arrows beside it; rules from memory
 * @example (await findDrivers(line, { replications: 2 }, { seed: '1', workers: 0 })).drivers[0].name // => 'B Fit'
 */
export async function findDrivers(given: GivenLine, request: DriverRequest, options: StudyOptions): Promise<DriverResult> {
  const line = completeLine(given)
  const { replications } = request
  checkReplications(replications, 'drivers need', 2)
  const drivers = driversOf(line, request)
  const wholes = wholeChanges(line)
  const lines = [line, ...wholes.map((change) => change.line), ...drivers.flatMap(({ scaled }) => [scaled(1 - STEP), scaled(1 + STEP)])]
  const ran = await withRunner(options, workOfLines(lines, replications), async (runner) => {
    runner.expect(lines.length * replications)
    return inCommon(await runner.run(lines, { from: 0, to: replications }))
  })
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
    seed: options.seed,
    replications,
    partial: n < replications,
    step: STEP,
    carriers: line.carriers.count,
    gridlocks: endedBy(ran[0]!, 'gridlock'),
    outOfProducts: endedBy(ran[0]!, 'out of products'),
    law: lineLaw,
    lawTerms: lineLaw === null ? null : lawTerms(lineLaw, line.carriers.count),
  } as const
  if (n < 2) {
    const none = { base: null, drivers: [], limits: [], oneCarrierMore: null, oneCarrierLess: null }
    return { ...head, ...none, wholeChanges: [], diagnosis: null, explanation: null }
  }
  const first = lines.length - 2 * drivers.length
  const effects = drivers
    .map(({ kind, name, station, lessIsBetter }, index): DriverEffect => {
      const [less, more] = [units[first + 2 * index]!, units[first + 2 * index + 1]!]
      const [faster, slower] = lessIsBetter ? [less, more] : [more, less]
      const gain = faster.reduce((sum, made, j) => sum + (made - slower[j]!) / 2, 0) / n
      return { kind, name, station, lessIsBetter, elasticity: elasticity({ base, faster, slower }, STEP), unitsOfStep: gain }
    })
    .sort((a, b) => b.elasticity.mean - a.elasticity.mean)
  const whole = wholes
    .map(({ line: _, ...change }, index): WholeEffect => ({ ...change, difference: pairedDifference(units[index + 1]!, base) }))
    .sort((a, b) => b.difference.mean - a.difference.mean)
  const carrier = (step: 1 | -1): PairedDifference | null =>
    whole.find((change) => change.kind === 'carrier' && change.step === step)?.difference ?? null
  const shares = stateShares(line, ran[0]!)
  const made = outputInterval(base)
  return {
    ...head,
    base: made,
    drivers: effects,
    limits: limitsOf(effects),
    oneCarrierMore: carrier(1),
    oneCarrierLess: carrier(-1),
    wholeChanges: whole,
    diagnosis: diagnose({ line, shares, units: made.mean, drivers: effects, wholeChanges: whole }),
    explanation: explained(line, ran[0]!, shares),
  }
}

/** Of all that is shown to bring output, times, stops and shares alike, the largest, and what cannot be told from it. */
function limitsOf(effects: readonly DriverEffect[]): number[] {
  const shown = [...effects.keys()].filter((index) => effects[index]!.elasticity.low > 0)
  return shown.length === 0 ? [] : limitingParts(shown.map((index) => effects[index]!.elasticity)).map((place) => shown[place]!)
}

/** Every zone has one way in and one way out at most: stations have neighbours. */
function isSeries({ zones, paths }: LineSpec): boolean {
  return zones.every(
    (_, zone) => paths.filter(({ from }) => from === zone).length <= 1 && paths.filter(({ to }) => to === zone).length <= 1,
  )
}

function explained(line: LineSpec, { layout, rows }: LineRows, shares: StateShares): Explanation | null {
  if (line.stations.length < 2) return null
  const zones = line.zones.length
  const start = line.stations.find(({ load }) => load !== null)?.zone ?? 0
  const order = [...line.stations.keys()].sort(
    (a, b) => ((line.stations[a]!.zone - start + zones) % zones) - ((line.stations[b]!.zone - start + zones) % zones),
  )
  const blocked = order.map((station) => shares[station]!.blocked)
  const starved = order.map((station) => shares[station]!.starved)
  const errors = order.map((station, place) => {
    const next = order[(place + 1) % order.length]!
    const blockedIn = shareIn(line, layout, station, 'blocked')
    const nextStarvedIn = shareIn(line, layout, next, 'starved')
    const { sd, n } = meanInterval(rows.map((row) => blockedIn(row) - nextStarvedIn(row)))
    return sd / Math.sqrt(n)
  })
  const loop = isPlainLoop(line)
  const found = loop || isSeries(line) ? arrows(blocked, starved, loop, errors) : null
  const worst = found?.candidates[0]
  return {
    stations: order.map((station, place) => ({
      station,
      blockedShare: blocked[place]!,
      starvedShare: starved[place]!,
      shares: shares[station]!,
    })),
    arrows: found,
    candidate: worst === undefined ? null : order[worst.station]!,
  }
}
