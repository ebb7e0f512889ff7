/** Where the time of stations goes, as mean shares of the window over replications. */
import { type ByStationState, type LineSpec, STATION_STATES, type StationState } from '@loopwright/line'
import { windowSecondsOf } from '@loopwright/line/bounds'
import { meanOf } from '@loopwright/stats'
import { byState } from '../runs/byState.ts'
import { type RowLayout, stationColumn } from '../runs/runRow.ts'
import type { LineRows } from '../runs/runner.ts'

/** By station, by state: mean share of the window, 0 … 1. */
export type StateShares = readonly ByStationState[]

/** @returns  one entry for each station; empty shares of 0 without a replication */
export function stateShares(line: LineSpec, { layout, rows }: LineRows): StateShares {
  return line.stations.map((_, station) =>
    byState(STATION_STATES, (_, state) => {
      const share = shareIn(line, layout, station, state)
      return rows.length === 0 ? 0 : meanOf(rows.map(share))
    }),
  )
}

/** Share of the window that a station spends in a state, from the row of a run: 0 … 1. */
export function shareIn(line: LineSpec, layout: RowLayout, station: number, state: StationState): (row: Float64Array) => number {
  const column = stationColumn(layout, station, state)
  const inWindow = windowSecondsOf(line)
  return (row) => Math.min(1, row[column]! / inWindow)
}
