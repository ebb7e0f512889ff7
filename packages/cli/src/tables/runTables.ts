/** The tables of `run --csv` for a single run; README.md of this package tells their columns. */
import type { RunResult } from '@loopwright/line'
import { CARRIER_STATES, STATION_STATES, ZONE_STATES } from '@loopwright/study'
import type { CsvTable } from '../csv.ts'
import type { TraceEvent } from '../documents/traceEvents.ts'
import { column } from './sweepTables.ts'

/** @param trace  null: not asked for */
export function runTables(run: RunResult, trace: readonly TraceEvent[] | null): CsvTable[] {
  const seconds = (states: readonly string[]): string[] => states.map((state) => `${column(state)}_s`)
  const tables: CsvTable[] = [
    { name: 'outputs', columns: ['unit', 'seconds'], rows: run.outputSeconds.map((instant, index) => [index + 1, instant]) },
    { name: 'hours', columns: ['hour', 'units'], rows: run.outputByHour.map((units, hour) => [hour + 1, units]) },
    {
      name: 'stations',
      columns: ['station', ...seconds(STATION_STATES), 'longest_block_s', 'cycles'],
      rows: run.stations.map((station) => [station.name, ...station.seconds, station.longestBlockSeconds, station.cycles]),
    },
    {
      name: 'zones',
      columns: ['zone', 'occupancy_mean', 'moves_out', ...seconds(ZONE_STATES)],
      rows: run.zones.map((zone) => [zone.name, zone.occupancyMean, zone.movesOut, ...zone.seconds]),
    },
    {
      name: 'carriers',
      columns: ['carrier', 'laps', ...seconds(CARRIER_STATES)],
      rows: run.carriers.map((carrier, index) => [index, carrier.laps, ...carrier.seconds]),
    },
    {
      name: 'stops',
      columns: ['cause', 'stops', 'seconds'],
      rows: [
        ...run.breakdowns.map((source) => [source.name, source.count, source.seconds]),
        ...(run.breaks.count > 0 ? [['break', run.breaks.count, run.breaks.seconds]] : []),
      ],
    },
  ]
  if (trace === null) return tables
  const events: CsvTable = {
    name: 'events',
    columns: ['seconds', 'event', 'place', 'to', 'carrier', 'detail'],
    rows: trace.map(({ seconds: at, event, place, to, carrier, detail }) => [at, event, place, to, carrier, detail]),
  }
  return [...tables, events]
}
