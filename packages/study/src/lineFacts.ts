/** What a line is, in numbers that a person can check against the drawing: mean times, exchanges, stops. No simulation. */
import { type BreakdownSpec, type Law, type LineSpec, law, type StationSpec } from '@loopwright/line'
import { distributionMean } from '@loopwright/stats'

export interface LineFacts {
  readonly law: Law
  /** metres; null where a zone has no length */
  readonly loopMetres: number | null
  /** names of the zones with a transfer, and of those that are entered only when the exit is clear */
  readonly transfers: readonly string[]
  readonly exitClearTransfers: readonly string[]
  readonly stations: readonly StationFacts[]
  readonly variants: readonly { readonly name: string; readonly share: number }[]
  readonly stops: readonly StopFacts[]
  /** index of the station with the longest exchange; null: no station */
  readonly slowestStation: number | null
}

export interface StationFacts {
  readonly name: string
  readonly title: string
  /** name */
  readonly zone: string
  readonly duties: readonly ('unload' | 'load' | 'work')[]
  /** mean over the mix; a variant without work here counts 0 s */
  readonly workSeconds: number
  readonly releaseSeconds: number
  /** move in and clear, from rest, and transfer changes */
  readonly moveAndClearSeconds: number
  /** the whole exchange: from one carrier's start in to the next one's */
  readonly exchangeSeconds: number
}

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
 * @throws RangeError  as `law` does
 */
export function lineFacts(spec: LineSpec): LineFacts {
  const lineLaw = law(spec)
  const lengths = spec.zones.map((zone) => zone.lengthMetres)
  const stations = spec.stations.map((station) => stationFacts(spec, lineLaw, station))
  const slowest = Math.max(...stations.map((station) => station.exchangeSeconds))
  return {
    law: lineLaw,
    loopMetres: lengths.every((length) => length !== null) ? lengths.reduce((sum, length) => sum + length!, 0) : null,
    transfers: spec.zones.filter((zone) => zone.transfer !== null).map((zone) => zone.name),
    exitClearTransfers: spec.zones.filter((zone) => zone.transfer?.enterOnlyIfExitClear === true).map((zone) => zone.name),
    stations,
    variants: spec.variants.map((name, index) => ({ name, share: lineLaw.variantShares[index]! })),
    stops: spec.breakdowns.map((source) => stopFacts(spec, source)),
    slowestStation: stations.length === 0 ? null : stations.findIndex((station) => station.exchangeSeconds === slowest),
  }
}

function stationFacts(spec: LineSpec, lineLaw: Law, station: StationSpec): StationFacts {
  const exchange = lineLaw.exchanges[station.zone]!
  return {
    name: station.name,
    title: station.title,
    zone: spec.zones[station.zone]!.name,
    duties: (['unload', 'load', 'work'] as const).filter((duty) => station[duty] !== null),
    workSeconds: exchange.workSeconds,
    releaseSeconds: exchange.releaseSeconds,
    moveAndClearSeconds: exchange.moveSeconds + exchange.changeSeconds + exchange.clearSeconds + exchange.changeBackSeconds,
    exchangeSeconds: exchange.seconds,
  }
}

function stopFacts(spec: LineSpec, source: BreakdownSpec): StopFacts {
  const part = source.part
  const at =
    part.kind === 'section'
      ? 'the whole line'
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
