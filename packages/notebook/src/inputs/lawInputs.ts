/** The rate that times and lengths alone allow, by hand calculation: what a reader can check with a pocket calculator. */
import { formatNumber, formatPerHour, formatSeconds, type Table } from '@loopwright/charts/table'
import { type LineSpec, stationWords } from '@loopwright/line'
import type { Law } from '@loopwright/line/bounds'
import { listTable } from './rows.ts'

export function lawInputs(line: LineSpec, law: Law, lawSeconds: number): Table {
  const station = law.constraintStation === null ? null : line.stations[law.constraintStation]
  const at = station == null ? `zone ${line.zones[law.constraintZone]?.name ?? ''}` : stationWords(station)
  const rows: [string, string][] = [
    ['Lap of one carrier alone', formatSeconds(law.lapSeconds)],
    [
      'Slowest exchange',
      `${formatSeconds(law.exchangeSeconds)} at ${at}: ${perHour(law.exchangeSeconds, law.unitsPerLap)}, ${formatNumber((lawSeconds * law.unitsPerLap) / law.exchangeSeconds, 0)} in the working time`,
    ],
    ['Lap of one hole', `${formatSeconds(law.holeLapSeconds)} over ${law.storageZones} storage zones`],
    ['Too few carriers below, too little room above', `${knee(law.carriersLow)} and ${knee(law.carriersHigh)} carriers`],
  ]
  return {
    ...listTable(law.exact ? 'The law of the loop (exact)' : 'The law of the loop (estimate from mean times, no stops)', rows),
    note: null,
  }
}

function perHour(exchangeSeconds: number, unitsPerLap: number): string {
  return exchangeSeconds > 0 ? `${formatPerHour((3600 * unitsPerLap) / exchangeSeconds)} units per working hour` : 'no limit'
}

function knee(carriers: number | null): string {
  return carriers === null ? '–' : String(carriers)
}
