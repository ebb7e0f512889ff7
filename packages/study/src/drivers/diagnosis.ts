/** What limits a line: what the limits say, what stations wait for, and what was gained by changes, each by itself, and whether they name the same. */
import { completeLine, type GivenLine, type LineSpec, type StationState, stationWords } from '@loopwright/line'
import { type Limit, type LimitKind, lineLimits } from '@loopwright/line/bounds'
import type { PairedDifference } from '@loopwright/stats/worlds'
import type { DriverEffect, WholeEffect } from './driverEffect.ts'
import type { StateShares } from './stationStates.ts'

/** Something that can limit a line, by its name. */
export interface Named {
  readonly kind: LimitKind | 'time'
  readonly name: string
  /** indices */
  readonly stations: readonly number[]
  readonly operators: readonly number[]
}

/** One way to know what limits a line, and what it names. */
export type Evidence =
  /** the slowest of the limits; what the line made of it, null without a run */
  | { readonly source: 'limit'; readonly named: Named; readonly limit: Limit; readonly reachedShare: number | null }
  /** the station and state that tell most; `share` of the window, mean; `busy`: the station is hardly ever without work */
  | {
      readonly source: 'states'
      readonly named: Named | null
      readonly station: number
      readonly state: StationState | 'busy'
      readonly share: number
    }
  /** the whole change that brings most, and is shown to */
  | { readonly source: 'one more'; readonly named: Named; readonly effect: WholeEffect }
  /** the small change that brings most */
  | { readonly source: 'driver'; readonly named: Named; readonly effect: DriverEffect }

/** What limits a line, and whether all that is known of it agrees. */
export interface Diagnosis {
  /** null: nothing says so */
  readonly limitedBy: Named | null
  /** what leads first */
  readonly evidence: readonly Evidence[]
  /** there are at least two pieces of evidence that name something, and all name the same */
  readonly agrees: boolean
  /** limits by mean times that are nearly as tight as what is named, where no simulated change tells them apart; the tightest first */
  readonly asTight: readonly Limit[]
}

/** What is known of a line: of its limits, its runs, its changes. */
export interface DiagnosisInput {
  readonly line: GivenLine
  /** of the run, by station; null: nothing was run */
  readonly shares: StateShares | null
  /** mean output per window; null: nothing was run */
  readonly units: number | null
  /** from a study of drivers, if there was one */
  readonly drivers?: readonly DriverEffect[]
  readonly wholeChanges?: readonly WholeEffect[]
  /** default: those of the line */
  readonly limits?: readonly Limit[]
}

/** what a station waits for itself counts from here on, as a share of the window */
const WAIT_MIN = 0.1
/** of the time that is no break: a station with so much to do hardly waits */
const BUSY = 0.85
/** of what carriers or room let through: a line that makes less than that share of it is short of neither */
const NEAR = 0.5
/** of the output: no change of a time by 5 % brings more, so that a whole that does stands in the way of several times */
const WHOLE_MIN = 0.05
/** of the limit that is named */
const REACHED = 0.95
/** estimates by mean times are no better than this */
const AS_TIGHT = 0.05

/**
 * What limits the line. Changes that were simulated go before what stations wait for, and that before limits of mean times.
 *
 * @returns  statements about the run's own numbers; what is named is one of the line's limits where there is such a one
 * @example (await findDrivers(line, { replications: 2 }, { seed: '1', workers: 0 })).diagnosis.limitedBy.name // => 'B Fit'
 */
export function diagnose({
  line: given,
  shares,
  units,
  drivers = [],
  wholeChanges = [],
  limits = lineLimits(given),
}: DiagnosisInput): Diagnosis {
  const line = completeLine(given)
  const first = limits[0]
  const byLimit: Evidence[] =
    first === undefined
      ? []
      : [{ source: 'limit', named: namedBy(first), limit: first, reachedShare: units === null ? null : units / first.unitsPerWindow }]
  const byStates = shares === null ? [] : stateEvidence(line, shares, limits, units)
  const ranOut = line.mix.kind === 'list' && byStates.some((one) => one.source === 'states' && one.state === 'waiting for product')
  // what a carrier more or fewer holds when the list is at its end tells nothing of room
  const wholes = ranOut ? wholeChanges.filter(({ kind }) => kind !== 'carrier') : wholeChanges
  const byChanges = changeEvidence(line, limits, drivers, wholes, units)
  const near = first !== undefined && units !== null && units >= 0.9 * first.unitsPerWindow
  const evidence = [...byChanges, ...(near ? [...byLimit, ...byStates] : [...byStates, ...byLimit])]
  const names = evidence.flatMap(({ named }) => (named === null ? [] : [named]))
  const limitedBy = names[0] ?? null
  const agrees = names.length > 1 && names.every((one) => isSame(one, limitedBy!))
  return { limitedBy, evidence, agrees, asTight: byChanges.length > 0 || units === null ? [] : nearlyAsTight(limits, limitedBy, units) }
}

/** Others within so much of the limit that is named: mean times do not tell them apart. */
function nearlyAsTight(limits: readonly Limit[], limitedBy: Named | null, units: number): Limit[] {
  const own = limitedBy === null ? undefined : limits.find((limit) => isSame(namedBy(limit), limitedBy))
  // a line that makes what the limit allows is held by that limit, whatever else is near
  if (own === undefined || units >= REACHED * own.unitsPerWindow) return []
  return limits.filter(
    (limit) => limit !== own && Math.abs(limit.unitsPerWindow / own.unitsPerWindow - 1) <= AS_TIGHT && !isSame(namedBy(limit), limitedBy!),
  )
}

/** The same kind, and one part at least in common where they are about parts. */
function isSame(a: Named, b: Named): boolean {
  if (a.kind !== b.kind) return false
  if (a.kind === 'operator') return a.operators.some((one) => b.operators.includes(one))
  if (a.kind === 'station' || a.kind === 'receiver') return a.stations.some((one) => b.stations.includes(one))
  return a.kind !== 'time' || a.name === b.name
}

const namedBy = ({ kind, name, stations, operators }: Limit): Named => ({ kind, name, stations, operators })

function limitOfKind(limits: readonly Limit[], kind: LimitKind, has: (limit: Limit) => boolean = () => true): Named | null {
  const found = limits.find((limit) => limit.kind === kind && has(limit))
  return found === undefined ? null : namedBy(found)
}

/** Who waits for what by itself tells more than who is starved or blocked by the others. */
function stateEvidence(line: LineSpec, shares: StateShares, limits: readonly Limit[], units: number | null): Evidence[] {
  const all = [...line.stations.keys()]
  if (all.length === 0) return []
  const at = (station: number, state: StationState): number => shares[station]?.[state] ?? 0
  const most = (of: (station: number) => number): number => all.reduce((best, station) => (of(station) > of(best) ? station : best))
  const busyShare = (station: number): number => {
    const there = 1 - at(station, 'break')
    const used = at(station, 'working') + at(station, 'handling') + at(station, 'exchanging') + at(station, 'stopped')
    return there > 0 ? used / there : 0
  }
  const busiest = most(busyShare)
  const ofStation = limitOfKind(limits, 'station', ({ stations }) => stations.includes(busiest)) ?? {
    kind: 'station',
    name: stationWords(line.stations[busiest]!),
    stations: [busiest],
    operators: [],
  }
  if (busyShare(busiest) >= BUSY) {
    return [{ source: 'states', named: ofStation, station: busiest, state: 'busy', share: busyShare(busiest) }]
  }
  const waits = (['waiting for product', 'waiting for receiver', 'waiting for operator'] as const)
    .map((state) => ({ state, station: most((station) => at(station, state)) }))
    .map((wait) => ({ ...wait, share: at(wait.station, wait.state) }))
    .sort((a, b) => b.share - a.share)
  const wait = waits[0]!
  if (wait.share >= WAIT_MIN) {
    const { state, station, share } = wait
    const named =
      state === 'waiting for product'
        ? (limitOfKind(limits, 'arrivals') ?? limitOfKind(limits, 'list'))
        : state === 'waiting for receiver'
          ? limitOfKind(limits, 'receiver', ({ stations }) => stations.includes(station))
          : limitOfKind(limits, 'operator', ({ stations }) => stations.includes(station))
    return [{ source: 'states', named, station, state, share }]
  }
  // nobody waits for anything but carriers, or for room
  const [starved, blocked] = [at(busiest, 'starved'), at(busiest, 'blocked')]
  const state = starved >= blocked ? 'starved' : 'blocked'
  // stations that wait for each other by chance alone are starved and blocked too
  const reached = ({ unitsPerWindow }: Limit): boolean => units === null || units >= NEAR * unitsPerWindow
  const lack = limitOfKind(limits, state === 'starved' ? 'carriers' : 'space', reached)
  const share = Math.max(starved, blocked)
  return share < WAIT_MIN
    ? [{ source: 'states', named: ofStation, station: busiest, state: 'busy', share: busyShare(busiest) }]
    : [{ source: 'states', named: lack, station: busiest, state, share }]
}

/** What small and whole changes brought, as per cent of the output for one per cent of what was changed. */
function changeEvidence(
  line: LineSpec,
  limits: readonly Limit[],
  drivers: readonly DriverEffect[],
  wholeChanges: readonly WholeEffect[],
  units: number | null,
): Evidence[] {
  const largest = drivers
    .filter(({ elasticity, kind }) => elasticity.mean > 0 && kind !== 'mix' && kind !== 'repair' && kind !== 'time to failure')
    .reduce<DriverEffect | null>((best, each) => (best === null || each.elasticity.mean > best.elasticity.mean ? each : best), null)
  // a smaller effect that is shown says nothing while a larger one may be there
  const small = largest !== null && largest.elasticity.low > 0 ? largest : null
  const gain = ({ difference }: WholeEffect): number => (units !== null && units > 0 && isGain(difference) ? difference.mean / units : 0)
  const whole = wholeChanges.reduce<WholeEffect | null>((best, each) => (best === null || gain(each) > gain(best) ? each : best), null)
  const bySmall: Evidence[] = small === null ? [] : [{ source: 'driver', named: driverNamed(line, limits, small), effect: small }]
  if (whole === null || gain(whole) === 0) return bySmall
  const named = wholeNamed(line, limits, whole)
  // one carrier of twelve is a small step too; one person of one is not
  const strength = whole.kind === 'carrier' ? gain(whole) * whole.count : gain(whole)
  // where mean times say the same, all that takes time on the round of few carriers counts a little, and none as much as one more
  const expected = named.kind === limits[0]?.kind && gain(whole) >= WHOLE_MIN
  const leads = whole.kind === 'carrier' ? expected || strength > (small?.elasticity.mean ?? 0) : gain(whole) >= WHOLE_MIN
  const byWhole: Evidence = { source: 'one more', named, effect: whole }
  if (!leads) return bySmall.length > 0 ? bySmall : [byWhole]
  // what takes time at an operator's stations, or on the round of a carrier, tells of that operator, or of the carriers
  const told =
    small !== null &&
    (named.kind === 'carriers' || (named.kind === 'operator' && small.station !== null && named.stations.includes(small.station)))
  const same: Evidence[] =
    small === null ? [] : [{ source: 'driver', named: told ? named : driverNamed(line, limits, small), effect: small }]
  return [byWhole, ...same]
}

const isGain = ({ mean, status }: PairedDifference): boolean =>
  mean > 0 && status !== 'no difference shown' && status !== 'identical in every replication'

function driverNamed(line: LineSpec, limits: readonly Limit[], { kind, name, station }: DriverEffect): Named {
  const other: Named = { kind: 'time', name, stations: station === null ? [] : [station], operators: [] }
  if (kind === 'task' && station !== null) {
    return (
      limitOfKind(limits, 'station', ({ stations }) => stations.includes(station)) ?? {
        ...other,
        kind: 'station',
        name: stationWords(line.stations[station]!),
      }
    )
  }
  // moves and reaction are part of every exchange and of every round: of the slowest of them they tell
  const [first] = limits
  if ((kind === 'moves' || kind === 'reaction') && first !== undefined && hasMoves(first)) return namedBy(first)
  if (kind === 'arrivals') return limitOfKind(limits, 'arrivals') ?? other
  if (kind === 'receiver') return limitOfKind(limits, 'receiver', ({ stations }) => stations.includes(station!)) ?? other
  return other
}

/** Moves are a part of what each unit takes there. */
const hasMoves = ({ kind, parts }: Limit): boolean =>
  kind === 'carriers' || kind === 'space' || (kind === 'station' && parts.exchangeSeconds > 0)

function wholeNamed(line: LineSpec, limits: readonly Limit[], { kind, name, step, operator }: WholeEffect): Named {
  if (kind === 'operator') {
    const own = operator === null ? [] : [operator]
    return (
      limitOfKind(limits, 'operator', ({ operators }) => own.some((one) => operators.includes(one))) ?? {
        kind: 'operator',
        name,
        stations: own.flatMap((one) => line.operators[one]!.stations),
        operators: own,
      }
    )
  }
  const of = kind === 'carrier' ? (step > 0 ? 'carriers' : 'space') : 'repair crew'
  return limitOfKind(limits, of) ?? { kind: of, name, stations: [], operators: [] }
}
