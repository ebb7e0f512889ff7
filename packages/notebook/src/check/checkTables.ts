/** Tables of what was understood of a line, in mean times. */
import { type ColumnOf, formatDuration, type Table, tableOf, timeScale, wordColumn } from '@loopwright/charts/table'
import { stationWords } from '@loopwright/line'
import type { LineFacts, StationFacts, StopFacts } from '@loopwright/study/change'
import { shareText } from '../inputs/quantityWords.ts'
import { NOT_KNOWN } from '../sweep/countWords.ts'

/** The stations with their mean times; the slowest exchange is marked. */
export function stationsTable(facts: LineFacts): Table {
  const scale = timeScale(
    facts.stations.flatMap(({ workSeconds, exchangeSeconds }) => [workSeconds, exchangeSeconds ?? 0]),
    1,
  )
  const time = (head: string, name: string, says: string, of: (station: StationFacts) => number | null): ColumnOf<StationFacts> => ({
    head,
    text: (station) => (of(station) === null ? NOT_KNOWN : scale.text(of(station)!)),
    data: [[name, says, of]],
  })
  return tableOf<StationFacts>({
    caption: 'Stations, mean times',
    columns: [
      { ...wordColumn<StationFacts>('Station', 'station', 'name in the file', ({ name }) => name), text: stationWords },
      wordColumn('Zone', 'zone', 'where it stands', ({ zone }) => zone),
      wordColumn('Duties', 'duties', 'what it does, in order', ({ duties }) => duties.join(', ')),
      time(`Work,\n${scale.unit}`, 'work_s', 'seconds of all tasks of one carrier, mean over the mix', ({ workSeconds }) => workSeconds),
      time(
        `Release,\n${scale.unit}`,
        'release_s',
        'seconds until the operator has let the carrier go, mean',
        ({ releaseSeconds }) => releaseSeconds,
      ),
      time(
        `Move and\nclear, ${scale.unit}`,
        'move_and_clear_s',
        'seconds of the move in from rest and of clearing the zone; empty: no single loop',
        ({ moveAndClearSeconds }) => moveAndClearSeconds,
      ),
      time(
        `Exchange,\n${scale.unit}`,
        'exchange_s',
        'seconds from the start in of one carrier to that of the next; empty: no single loop',
        ({ exchangeSeconds }) => exchangeSeconds,
      ),
    ],
    rows: facts.stations,
    marked: (_, index) => index === facts.slowestStation,
    note: `Means over the mix.${facts.law === null ? ' The slowest by the limits of the line is marked.' : ' Exchange: from one carrier’s start in to the next one’s, from rest; the slowest is marked.'}`,
  })
}

/** What is made, and how often. */
export function variantsTable({ variants }: Pick<LineFacts, 'variants'>): Table {
  return tableOf<LineFacts['variants'][number]>({
    caption: 'Products',
    columns: [
      wordColumn('Variant', 'variant', 'name of the variant', ({ name }) => name),
      { head: 'Share', text: ({ share }) => shareText(share), data: [['share', 'of all products, 0 … 1', ({ share }) => share]] },
    ],
    rows: variants,
  })
}

/** What stops the line, and how often and how long on average. */
export function stopsTable({ stops }: Pick<LineFacts, 'stops'>): Table {
  return tableOf<StopFacts>({
    caption: 'Stops, mean times',
    columns: [
      wordColumn('Stop', 'stop', 'name of the stop', ({ name }) => name),
      wordColumn('At', 'at', 'what it stops', ({ at }) => at),
      {
        head: 'Comes on average after',
        text: ({ timeToFailureSeconds, clock }) =>
          `${formatDuration(timeToFailureSeconds)} ${clock === 'operating' ? 'of operation' : 'by the clock'}`,
        data: [
          ['time_to_failure_s', 'seconds, mean', ({ timeToFailureSeconds }) => timeToFailureSeconds],
          ['clock', 'operating: runs while the part works; calendar: always', ({ clock }) => clock],
        ],
      },
      {
        head: 'Lasts on average',
        text: ({ repairSeconds }) => formatDuration(repairSeconds),
        data: [['lasts_s', 'seconds, mean', ({ repairSeconds }) => repairSeconds]],
      },
    ],
    rows: stops,
  })
}
