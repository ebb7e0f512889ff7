/** What holds a part, told by the stops and breaks of a trace. (MODEL.md §7, "What a stop holds") */
import type { LineSpec } from '@loopwright/line'

/** The clock grid: floor(x·2²⁰ + ½)/2²⁰. */
export const grid = (seconds: number): number => Math.floor(seconds * 2 ** 20 + 0.5) / 2 ** 20

export interface Holds {
  isBreak: boolean
  begin(source: number): void
  end(source: number): void
  isDown(source: number): boolean
  station(index: number): boolean
  zone(index: number): boolean
  /** names of all that holds the station or the zone; null: not asked */
  causes(station: number | null, zone: number | null): string[]
}

export function holdsOf(spec: LineSpec): Holds {
  const down = new Set<number>()
  const onStation = (index: number) =>
    [...down].filter((source) => {
      const { part } = spec.breakdowns[source]!
      return part.kind === 'station' && part.index === index
    })
  const onZone = (index: number) =>
    [...down].filter((source) => {
      const { part } = spec.breakdowns[source]!
      return part.kind === 'section' || ((part.kind === 'zone' || part.kind === 'transfer') && part.index === index)
    })
  const holds: Holds = {
    isBreak: false,
    begin: (source) => down.add(source),
    end: (source) => down.delete(source),
    isDown: (source) => down.has(source),
    station: (index) => onStation(index).length > 0 || (holds.isBreak && !spec.stations[index]!.worksInBreaks),
    zone: (index) => onZone(index).length > 0 || (holds.isBreak && !spec.conveyorDuringBreaks),
    causes(station, zone) {
      const sources = [...(station === null ? [] : onStation(station)), ...(zone === null ? [] : onZone(zone))]
      const isBreak =
        holds.isBreak && ((station !== null && !spec.stations[station]!.worksInBreaks) || (zone !== null && !spec.conveyorDuringBreaks))
      return [...sources.map((source) => spec.breakdowns[source]!.name), ...(isBreak ? ['break'] : [])]
    },
  }
  return holds
}
