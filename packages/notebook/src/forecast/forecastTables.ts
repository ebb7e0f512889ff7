/** The tables of a forecast: what is made in which stretch of time, and the overtime that the plan takes. */
import { formatNumber, formatWithHalfWidth, meanFields, type Table, tableOf, wordColumn } from '@loopwright/charts/table'
import { isFixed } from '../sweep/answerWords.ts'
import { NOT_KNOWN } from '../sweep/countWords.ts'
import type { Period } from '../sweep/period.ts'
import { planText } from '../words/planWords.ts'
import type { Spread } from './forecast.ts'
import { type ForecastResult, hasWeeks } from './forecastOf.ts'
import { weekWords } from './weeks.ts'

interface Row {
  readonly name: string
  readonly of: Spread
  readonly scale: number
  readonly decimals: number
  readonly seconds: number
}

/** Units of a net hour, a shift and a week. */
export function forecastTable({ shift, week, shiftsPerWeek, netSeconds, sweep }: ForecastResult, words: Period): Table {
  const { one } = words
  const fixed = isFixed(sweep.counts[0]!)
  const perHour = 3600 / netSeconds
  const rows: Row[] = [
    { name: 'net hour', of: shift, scale: perHour, decimals: perHourDecimals((shift.mean?.mean ?? 0) * perHour), seconds: 3600 },
    { name: one, of: shift, scale: 1, decimals: 0, seconds: netSeconds },
    ...(!hasWeeks({ week, shiftsPerWeek, sweep })
      ? []
      : [
          {
            name: weekWords(shiftsPerWeek, words).replace(/^a /, ''),
            of: week,
            scale: 1,
            decimals: 0,
            seconds: netSeconds * shiftsPerWeek,
          },
        ]),
  ]
  const quantile = (p: 'p10' | 'p50' | 'p90', head: string, says: string) => ({
    head,
    text: ({ of, scale, decimals }: Row) => (of[p] === null ? NOT_KNOWN : formatNumber(of[p].point * scale, decimals)),
    data: [[p, says, ({ of, scale }: Row) => (of[p] === null ? null : of[p].point * scale)] as const],
  })
  return tableOf<Row>({
    caption: 'Units made',
    columns: [
      {
        head: 'Per',
        align: 'left',
        text: ({ name }) => name,
        data: [
          ['per', 'stretch of time', ({ name }) => name],
          ['net_s', 'its net time, seconds', ({ seconds }) => seconds],
        ],
      },
      {
        head: fixed ? 'Units' : 'Average',
        text: ({ of, of: { mean }, scale, decimals }) =>
          mean === null
            ? formatNumber(of.units[0]! * scale, decimals)
            : decimals === 0 && !fixed
              ? formatWithHalfWidth(mean.mean, mean.halfWidth)
              : formatNumber(mean.mean * scale, decimals),
        data: meanFields('units', 'units made', ({ of: { mean }, scale }) =>
          mean === null ? null : { mean: mean.mean * scale, low: mean.low * scale, high: mean.high * scale },
        ),
      },
      ...(fixed
        ? []
        : [
            quantile('p10', 'P10: nine of\nten better', 'units that nine of ten reach'),
            quantile('p50', 'P50: half\nbetter', 'units that half of them reach'),
            quantile('p90', 'P90: one of\nten better', 'units that one of ten reaches'),
          ]),
    ],
    rows,
    marked: ({ name }) => name === one,
    note: `${fixed ? '' : 'Averages with 95 % intervals. '}The net hour is that of a whole ${one}: its units over its net time; single hours differ${fixed ? '' : ' more'}.`,
  })
}

/** A line that makes less than one unit an hour needs more decimals to tell its hours apart. */
const perHourDecimals = (perHour: number): number => (perHour > 0 && perHour < 1 ? 3 : 1)

const rateText = (perHour: number): string => formatNumber(perHour, perHourDecimals(perHour))

/** Overtime on average, in a bad shift, and how many shifts take none. */
export function overtimeTable({ overtime, shift }: ForecastResult, { one }: Period): Table {
  const { mean, p90, minutes: each } = overtime!
  const without = each.filter((one) => one === 0).length / each.length
  const rows: readonly { readonly what: string; readonly shown: string; readonly value: number }[] = [
    { what: 'On average', shown: minutes(mean.mean), value: mean.mean },
    ...(p90 === null ? [] : [{ what: `In the worst ${one} of ten, at least`, shown: minutes(p90.point), value: p90.point }]),
    {
      what: `${one[0]!.toUpperCase()}${one.slice(1)}s without any`,
      shown: `${each.filter((one) => one === 0).length} of ${each.length}`,
      value: without,
    },
  ]
  return tableOf<(typeof rows)[number]>({
    caption: `Overtime that the plan of ${planText(shift.plan!)} takes, minutes a ${one}`,
    columns: [
      wordColumn('Overtime', 'what', 'which figure', ({ what }) => what),
      {
        head: 'Minutes',
        text: ({ shown }) => shown,
        data: [['minutes', `minutes a ${one}; of the last row: share of simulated ${one}s, 0 … 1`, ({ value }) => value]],
      },
    ],
    rows,
    marked: (_, index) => index === 0,
    note: `What each ${one} lacks, over the average rate of ${rateText(overtime!.unitsPerMinute * 60)} units per net hour; a ${one} that makes more is not set against one that makes less.`,
  })
}

/** Minutes as they are told. */
export const minutes = (value: number): string => formatNumber(value, value < 9.95 ? 1 : 0)
