/** The rate that times and lengths alone allow, by hand calculation: what a reader can check with a pocket calculator. */
import { formatNumber, type Table } from '@loopwright/charts/table'
import { type LineSpec, stationWords } from '@loopwright/line'
import type { Law } from '@loopwright/line/bounds'
import { listTable } from './rows.ts'

export function lawInputs(line: LineSpec, law: Law, lawSeconds: number): Table {
  const station = law.constraintStation === null ? null : line.stations[law.constraintStation]
  const at = station == null ? `zone ${line.zones[law.constraintZone]?.name ?? ''}` : stationWords(station)
  const rows: [string, string][] = [
    ['Lap of one carrier alone', seconds(law.lapSeconds)],
    [
      'Slowest exchange',
      `${seconds(law.exchangeSeconds)} at ${at}: ${perHour(law.exchangeSeconds, law.unitsPerLap)}, ${formatNumber(lawSeconds / law.exchangeSeconds, 0)} in the working time`,
    ],
    ['Lap of one hole', `${seconds(law.holeLapSeconds)} over ${law.storageZones} storage zones`],
    ['Carriers limit up to, space from', `${knee(law.carriersLow)} and ${knee(law.carriersHigh)} carriers`],
  ]
  return {
    ...listTable(law.exact ? 'The law of the loop (exact)' : 'The law of the loop (estimate from mean times, no stops)', rows),
    note: null,
  }
}

function perHour(exchangeSeconds: number, unitsPerLap: number): string {
  return exchangeSeconds > 0 ? `${formatNumber((3600 * unitsPerLap) / exchangeSeconds, 1)} units per working hour` : 'no limit'
}

function knee(carriers: number | null): string {
  return carriers === null ? '–' : String(carriers)
}

function seconds(value: number): string {
  return `${formatNumber(value, 1)} s`
}
