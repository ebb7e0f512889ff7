/** What is assumed about stations, their times and the product mix. */
import type { Table } from '@loopwright/charts/table'
import { type LineSpec, type StationSpec, stationWords, type TaskSpec } from '@loopwright/line'
import { mixShares } from '@loopwright/line/bounds'
import { type Distribution, distributionMean, distributionVariance } from '@loopwright/stats'
import { meanTaskSeconds } from '@loopwright/study/change'
import { distributionWords } from './distributionWords.ts'
import { shareText, shortNumber, spanText } from './quantityWords.ts'
import { textTable } from './rows.ts'

export function stationInputs(line: LineSpec): Table {
  const shares = mixShares(line.mix, line.variants.length)
  const rows = line.stations.map((station) => {
    const duties = dutiesOf(station)
    return [
      stationWords(station),
      line.zones[station.zone]?.name ?? '',
      duties.map(({ duty }) => duty).join(', '),
      shortNumber(meanTaskSeconds(station, shares)),
      spanText(
        duties.flatMap(({ tasks }) => tasks.flatMap((task) => task.seconds.map(cv))),
        shareText,
        '0 %',
      ),
      distributionWords(station.releaseSeconds),
      workedBy(line, station),
    ]
  })
  return textTable(
    'Stations',
    ['Station', 'Zone', 'Duty', 'Mean time, s', 'Spread (cv)', 'Release', 'Worked by'],
    ['Zone', 'Duty', 'Release', 'Worked by'],
    rows,
    'Mean time over the mix, release not included. cv: standard deviation over mean of the time for one variant.',
  )
}

function workedBy(line: LineSpec, station: StationSpec): string {
  const { operatorsNeeded: needed } = station
  if (needed === 0) return 'automatic'
  const names = line.operators.filter(({ stations }) => stations.some((index) => line.stations[index] === station)).map(({ name }) => name)
  if (names.length === 0) return needed === 1 ? 'own operator' : `${needed} own operators`
  return needed === 1 ? names.join(' or ') : `${needed} of ${names.join(', ')}`
}

/** Mean seconds of every task for every variant, with the variant's share. */
export function variantInputs(line: LineSpec): Table {
  const shares = mixShares(line.mix, line.variants.length)
  const tasks = line.stations.flatMap((station) => dutiesOf(station).flatMap((duty) => duty.tasks.map((task) => ({ station, task }))))
  const heads = ['Variant', 'Share', ...tasks.map(({ station, task }) => `${station.name}\n${line.tasks[task.task] ?? ''}, s`)]
  const rows = line.variants.map((variant, index) => [
    variant,
    shareText(shares[index]!),
    ...tasks.map(({ task }) => {
      const time = task.seconds[index] ?? null
      return time === null ? '–' : shortNumber(distributionMean(time))
    }),
  ])
  return textTable(`Mix: ${mixWords(line)}; mean task times`, heads, [], rows, distributionNote(tasks.map(({ task }) => task)))
}

function mixWords(line: LineSpec): string {
  switch (line.mix.kind) {
    case 'random':
      return 'variants at random by share'
    case 'levelled':
      return 'variants levelled by share'
    case 'pattern':
      return `a pattern of ${line.mix.sequence.length} products, repeated`
    case 'list':
      return `a list of ${line.mix.sequence.length} products`
  }
}

function distributionNote(tasks: readonly TaskSpec[]): string {
  const kinds = [...new Set(tasks.flatMap((task) => task.seconds.flatMap((time) => (time === null ? [] : [time.kind]))))]
  return `Distribution of the times: ${kinds.join(', ')}.`
}

function dutiesOf(station: StationSpec): { duty: string; tasks: readonly TaskSpec[] }[] {
  return (['unload', 'load', 'work'] as const).flatMap((duty) => (station[duty] === null ? [] : [{ duty, tasks: station[duty] }]))
}

function cv(time: Distribution | null): number | null {
  if (time === null) return null
  const mean = distributionMean(time)
  return mean > 0 ? Math.sqrt(distributionVariance(time)) / mean : 0
}
