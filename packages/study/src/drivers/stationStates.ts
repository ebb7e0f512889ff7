/** Where the time of stations goes, as mean shares of the window over replications. */
import { type ByStationState, type LineSpec, STATION_STATES } from '@loopwright/line'
import { byState } from '../runs/byState.ts'
import { stationColumn } from '../runs/runRow.ts'
import type { LineRows } from '../runs/runner.ts'

/** By station, by state: mean share of the window, 0 … 1. */
export type StateShares = readonly ByStationState[]

/** @returns  one entry for each station; empty shares of 0 without a replication */
export function stateShares(line: LineSpec, { layout, rows }: LineRows): StateShares {
  const windowSeconds = line.window.endSeconds - line.window.warmupSeconds
  return line.stations.map((_, station) =>
    byState(STATION_STATES, (_, state) => {
      const column = stationColumn(layout, station, state)
      const sum = rows.reduce((total, row) => total + Math.min(1, row[column]! / windowSeconds), 0)
      return rows.length === 0 ? 0 : sum / rows.length
    }),
  )
}
