/** Where the time of stations goes, as mean shares of the window over replications. */
import { type LineSpec, STATION_STATES, type StationState } from '@loopwright/line'
import type { LineRows } from '../runs/runner.ts'

/** By station, by state in the order of STATION_STATES: mean share of the window, 0 … 1. */
export type StateShares = readonly (readonly number[])[]

/** @returns  one entry for each station; empty shares of 0 without a replication */
export function stateShares(line: LineSpec, { layout, rows }: LineRows): StateShares {
  const windowSeconds = line.window.endSeconds - line.window.warmupSeconds
  return line.stations.map((_, station) =>
    STATION_STATES.map((_, state) => {
      const column = layout.station + station * layout.stationStride + state
      const sum = rows.reduce((total, row) => total + Math.min(1, row[column]! / windowSeconds), 0)
      return rows.length === 0 ? 0 : sum / rows.length
    }),
  )
}

/** One share of one station. */
export const shareOf = (shares: StateShares, station: number, state: StationState): number =>
  shares[station]?.[STATION_STATES.indexOf(state)] ?? 0
