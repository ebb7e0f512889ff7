/** The tables of `sweep --csv`; README.md of this package tells their columns. */
import { STATION_STATES, type SweepCount, type SweepResult, ZONE_STATES } from '@loopwright/study'
import type { CsvTable, CsvValue } from '../csv.ts'

export function sweepTables(result: SweepResult): CsvTable[] {
  return countTables(result.counts, result.lawSeconds)
}

/** One table per kind of thing, the number of carriers in the first column of each. */
export function countTables(counts: readonly SweepCount[], lawSeconds: number): CsvTable[] {
  const rows = (of: (count: SweepCount) => readonly (readonly CsvValue[])[]): CsvValue[][] =>
    counts.flatMap((count) => of(count).map((row) => [count.carriers, ...row]))
  return [
    {
      name: 'counts',
      columns: COUNT_COLUMNS.map(([name]) => name),
      rows: counts.map((count) => COUNT_COLUMNS.map(([, of]) => of(count, lawSeconds))),
    },
    {
      name: 'units',
      columns: ['carriers', 'replication', 'units'],
      rows: rows((count) => count.units.map((units, replication) => [replication, units])),
    },
    {
      name: 'hours',
      columns: ['carriers', 'hour', 'units_mean'],
      rows: rows((count) => count.outputByHour.map((units, hour) => [hour + 1, units])),
    },
    {
      name: 'stations',
      columns: ['carriers', 'station', 'title', ...STATION_STATES.map(column), 'longest_block_s'],
      rows: rows((count) =>
        count.stations.map((station) => [station.name, station.title, ...station.shares, station.longestBlockSecondsMean]),
      ),
    },
    {
      name: 'zones',
      columns: ['carriers', 'zone', 'occupancy_mean', ...ZONE_STATES.map(column)],
      rows: rows((count) => count.zones.map((zone) => [zone.name, zone.occupancyMean, ...zone.shares])),
    },
    {
      name: 'stops',
      columns: ['carriers', 'cause', 'stops_mean', 'seconds_mean'],
      rows: rows((count) => count.stoppedBy.map((stop) => [stop.cause, stop.count, stop.seconds])),
    },
  ]
}

/** `waiting for operator` → `waiting_for_operator` */
export const column = (state: string): string => state.replaceAll(' ', '_')

const COUNT_COLUMNS: readonly (readonly [name: string, of: (count: SweepCount, lawSeconds: number) => CsvValue])[] = [
  ['carriers', (count) => count.carriers],
  ['replications', (count) => count.replications],
  ['units_mean', (count) => count.mean?.mean ?? null],
  ['units_mean_low', (count) => count.mean?.low ?? null],
  ['units_mean_high', (count) => count.mean?.high ?? null],
  ['units_sd', (count) => count.mean?.sd ?? null],
  ['p10', (count) => count.p10?.point ?? null],
  ['p50', (count) => count.p50?.point ?? null],
  ['p90', (count) => count.p90?.point ?? null],
  ['plan_met', (count) => count.meetsPlan?.share ?? null],
  ['plan_met_low', (count) => count.meetsPlan?.low ?? null],
  ['plan_met_high', (count) => count.meetsPlan?.high ?? null],
  ['single_low', (count) => count.singleShift?.low ?? null],
  ['single_high', (count) => count.singleShift?.high ?? null],
  ['gridlocks', (count) => count.gridlocks],
  ['law_units', (count, lawSeconds) => (count.law === null ? null : count.law.rate * lawSeconds)],
  ['law_regime', (count) => count.law?.regime ?? null],
  ['law_exact', (count) => count.law?.exact ?? null],
  ['lap_s', (count) => count.lapSecondsMean],
  ['time_in_line_s', (count) => count.timeInLineSecondsMean],
  ['products_in_line', (count) => count.productsInLineMean],
]
