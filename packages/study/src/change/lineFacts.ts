/** What a line is, in numbers that a person can check against the drawing: mean times, exchanges, stops. No simulation. */
import { type BreakdownSpec, completeLine, DUTIES, type GivenLine, type LineSpec, type StationSpec } from '@loopwright/line'
import { type Law, lawOrNull, type Limit, lineLimits, mixShares } from '@loopwright/line/bounds'
import { distributionMean } from '@loopwright/stats'
import { meanTaskSeconds } from './lineChange.ts'

/** What a line is, by mean times; seconds, metres, shares 0 … 1. */
export interface LineFacts {
  /** null: the line is no single closed loop */
  readonly law: Law | null
  /** metres; null where a zone has no length */
  readonly loopMetres: number | null
  /** names of the zones with a transfer, and of those that are entered only when the exit is clear */
  readonly transfers: readonly string[]
  readonly exitClearTransfers: readonly string[]
  readonly stations: readonly StationFacts[]
  readonly variants: readonly { readonly name: string; readonly share: number }[]
  readonly stops: readonly StopFacts[]
  /** index of the station with the longest exchange; where there is no law, of the one that limits most; null: no station */
  readonly slowestStation: number | null
  /** what limits the line, the slowest first */
  readonly limits: readonly Limit[]
}

/** What a station is, by mean times; seconds. */
export interface StationFacts {
  readonly name: string
  readonly title: string
  /** name */
  readonly zone: string
  readonly duties: readonly ('unload' | 'load' | 'work')[]
  /** mean over the mix; a variant without work here counts 0 s */
  readonly workSeconds: number
  readonly releaseSeconds: number
  /** move in and clear, from rest, and transfer changes; null without a law */
  readonly moveAndClearSeconds: number | null
  /** the whole exchange: from one carrier's start in to the next one's; null without a law */
  readonly exchangeSeconds: number | null
}

/** What a source of stops is, by mean times; seconds. */
export interface StopFacts {
  readonly name: string
  /** such as `station S2`, `zone Z09`, `the whole line` */
  readonly at: string
  readonly clock: 'operating' | 'calendar'
  readonly timeToFailureSeconds: number
  readonly repairSeconds: number
}

/**
 * The facts of a line.
 *
 * @example lineFacts(line).stops.map(({ name }) => name) // => ['jam']
 */
export function lineFacts(given: GivenLine): LineFacts {
  const spec = completeLine(given)
  const lineLaw = lawOrNull(spec)
  const shares = mixShares(spec.mix, spec.variants.length)
  const lengths = spec.zones.map((zone) => zone.lengthMetres)
  const stations = spec.stations.map((station) => stationFacts(spec, lineLaw, shares, station))
  const limits = lineLimits(spec)
  const paces = stations.map((station) => station.exchangeSeconds ?? station.workSeconds + station.releaseSeconds)
  return {
    law: lineLaw,
    loopMetres: lengths.every((length) => length !== null) ? lengths.reduce((sum, length) => sum + length!, 0) : null,
    transfers: spec.zones.filter((zone) => zone.transfer !== null).map((zone) => zone.name),
    exitClearTransfers: spec.zones.filter((zone) => zone.transfer?.enterOnlyIfExitClear === true).map((zone) => zone.name),
    stations,
    variants: spec.variants.map((name, index) => ({ name, share: shares[index]! })),
    stops: spec.breakdowns.map((source) => stopFacts(spec, source)),
    slowestStation: slowestStation(lineLaw, limits) ?? (stations.length === 0 ? null : paces.indexOf(Math.max(...paces))),
    limits,
  }
}

/** Work alone does not tell on a line with several ways: few products may come to the longest. */
const slowestStation = (lineLaw: Law | null, limits: readonly Limit[]): number | null =>
  lineLaw === null ? (limits.find(({ kind }) => kind === 'station')?.stations[0] ?? null) : null

function stationFacts(spec: LineSpec, lineLaw: Law | null, shares: readonly number[], station: StationSpec): StationFacts {
  const exchange = lineLaw?.exchanges[station.zone] ?? null
  return {
    name: station.name,
    title: station.title,
    zone: spec.zones[station.zone]!.name,
    duties: DUTIES.filter((duty) => station[duty] !== null),
    workSeconds: exchange?.workSeconds ?? meanTaskSeconds(station, shares),
    releaseSeconds: exchange?.releaseSeconds ?? distributionMean(station.releaseSeconds),
    moveAndClearSeconds:
      exchange === null ? null : exchange.moveSeconds + exchange.changeSeconds + exchange.clearSeconds + exchange.changeBackSeconds,
    exchangeSeconds: exchange?.seconds ?? null,
  }
}

function stopFacts(spec: LineSpec, source: BreakdownSpec): StopFacts {
  const part = source.part
  const at =
    part.kind === 'section'
      ? spec.sections[part.index]!.zones.length === spec.zones.length
        ? 'the whole line'
        : `section ${spec.sections[part.index]!.name}`
      : part.kind === 'station'
        ? `station ${spec.stations[part.index]!.name}`
        : `${part.kind} ${spec.zones[part.index]!.name}`
  return {
    name: source.name,
    at,
    clock: source.clock,
    timeToFailureSeconds: distributionMean(source.timeToFailureSeconds),
    repairSeconds: distributionMean(source.repairSeconds),
  }
}
