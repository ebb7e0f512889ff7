/** Where the stations' time goes, as a table of at most eight columns. */
import { percent, type Table } from '@loopwright/charts'
import { STATION_STATES, type SweepCount } from '@loopwright/study'

/** Columns, and the states that add up to each. Together they hold every state once. */
const COLUMNS: readonly (readonly [head: string, states: readonly string[]])[] = [
  ['working', ['working', 'handling']],
  ['exchan-\nging', ['exchanging']],
  ['blocked', ['blocked']],
  ['starved', ['starved']],
  ['waiting', ['waiting for operator', 'waiting for product', 'waiting for receiver']],
  ['stopped', ['stopped']],
  ['break', ['break']],
]

/**
 * @param count   with at least one replication
 * @param window  such as "the second shift"
 */
export function stationTable(count: SweepCount, window: string): Table {
  const share = (shares: readonly number[], states: readonly string[]): number =>
    states.reduce((sum, state) => sum + shares[STATION_STATES.indexOf(state as (typeof STATION_STATES)[number])]!, 0)
  const kept = COLUMNS.filter(
    ([, states]) => states[0] !== 'waiting for operator' || count.stations.some(({ shares }) => share(shares, states) > 0),
  )
  return {
    caption: `Where the stations' time goes, % of ${window}`,
    columns: [
      { head: 'Station', align: 'left', pageOnly: false },
      ...kept.map(([head]) => ({ head, align: 'right', pageOnly: false }) as const),
    ],
    rows: count.stations.map((station) => ({
      cells: [stationName(station.name, station.title), ...kept.map(([, states]) => percent(share(station.shares, states)))],
      marked: false,
    })),
    note: `In % of ${window}; each row adds up to 100 but for rounding.`,
  }
}

/** A name of at most 26 characters, so that the table keeps to 80. */
export function stationName(name: string, title: string): string {
  const whole = name === title ? name : `${name} ${title}`
  return whole.length <= 26 ? whole : `${whole.slice(0, 25)}…`
}
