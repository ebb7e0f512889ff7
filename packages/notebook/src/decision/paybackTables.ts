/** Tables of a payback: money of each alternative, seconds × units beside it, and what is reckoned with. */
import { formatNumber, formatShare, type Table, tableOf, wordColumn } from '@loopwright/charts/table'
import type { PaybackOf, PaybackResult, Range } from '@loopwright/decide'
import { NOT_KNOWN } from '../sweep/countWords.ts'
import type { DecisionRuns } from './decisionRuns.ts'
import { moneyText, monthsText, rangeText } from './moneyWords.ts'

/** What is saved a year, and when it has paid back, with its spread. */
export function moneyTable({ alternatives }: PaybackResult, currency: string): Table {
  return tableOf<PaybackOf>({
    caption: 'When it has paid back',
    columns: [
      wordColumn('Alternative', 'alternative', 'name of the alternative', ({ name }) => name),
      {
        head: `Saved a\nyear, ${currency}`,
        text: ({ savings, spread }) => moneyText(savings.annual, currency, spread.annual).replace(` ${currency}`, ''),
        data: [
          ['annual', 'saved a year, money', ({ savings }) => savings.annual],
          ['annual_p10', 'nine of ten draws save more', ({ spread }) => spread.annual.p10],
          ['annual_p90', 'one of ten draws saves more', ({ spread }) => spread.annual.p90],
          ['overtime', 'of it overtime', ({ savings }) => savings.overtime],
          ['labour', 'of it paid hours of a smaller crew', ({ savings }) => savings.labour],
          ['running_cost', 'of it running cost, below 0: it costs more', ({ savings }) => savings.runningCost],
        ],
      },
      {
        head: 'Payback,\nmonths',
        text: ({ worth, spread }) =>
          worth.paybackMonths === null
            ? 'never'
            : withRange(
                formatNumber(worth.paybackMonths, worth.paybackMonths < 9.95 ? 1 : 0),
                spread.paybackMonths,
                worth.paybackMonths < 9.95 ? 1 : 0,
              ),
        data: [
          ['payback_months', 'months; empty: never', ({ worth }) => worth.paybackMonths],
          ['payback_p10_months', 'one of ten draws is quicker', ({ spread }) => spread.paybackMonths?.p10 ?? null],
          ['payback_p90_months', 'nine of ten draws are quicker', ({ spread }) => spread.paybackMonths?.p90 ?? null],
          ['within_hurdle', 'share of the draws within the hurdle, 0 … 1', ({ spread }) => spread.withinHurdleShare],
        ],
      },
      {
        head: 'Discounted,\nyears',
        text: ({ worth }) => (worth.discountedYears === null ? 'never' : formatNumber(worth.discountedYears, 1)),
        data: [['discounted_years', 'years until discounted savings pay it back; empty: never', ({ worth }) => worth.discountedYears]],
      },
    ],
    rows: alternatives,
    marked: ({ withinHurdle }) => withinHurdle,
    tone: ({ withinHurdle }) => (withinHurdle ? 'good' : undefined),
    note: 'In brackets: eight of ten draws. Marked: within the hurdle. Injuries, damage, floor and the like are no part of it.',
  })
}

/** Net present value and internal return, each with its spread. */
export function worthTable({ alternatives, money }: PaybackResult, currency: string): Table {
  return tableOf<PaybackOf>({
    caption: `What it is worth over ${formatNumber(money.years, 0)} years at ${formatShare(money.interest)}`,
    columns: [
      wordColumn('Alternative', 'alternative', 'name of the alternative', ({ name }) => name),
      {
        head: `Net present\nvalue, 1 000 ${currency}`,
        text: ({ worth, spread: { netPresentValue: range } }) => {
          const decimals = thousandDecimals(range)
          const inThousands = { p10: range.p10 / 1000, p50: range.p50 / 1000, p90: range.p90 / 1000 }
          return withRange(formatNumber(worth.netPresentValue / 1000, decimals), inThousands, decimals)
        },
        data: [
          ['npv', 'net present value, money', ({ worth }) => worth.netPresentValue],
          ['npv_p10', 'nine of ten draws are worth more', ({ spread }) => spread.netPresentValue.p10],
          ['npv_p90', 'one of ten draws is worth more', ({ spread }) => spread.netPresentValue.p90],
        ],
      },
      {
        head: 'Internal\nreturn, %',
        text: ({ worth, spread: { internalReturn: range } }) =>
          worth.internalReturn.rate === null
            ? NOT_KNOWN
            : withRange(
                formatNumber(100 * worth.internalReturn.rate, 0),
                range === null ? null : { p10: 100 * range.p10, p50: 100 * range.p50, p90: 100 * range.p90 },
                0,
              ),
        data: [
          ['irr', 'internal rate of return, share a year; empty: none', ({ worth }) => worth.internalReturn.rate],
          ['irr_p10', 'nine of ten draws return more; empty: one of ten has none', ({ spread }) => spread.internalReturn?.p10 ?? null],
          ['irr_p90', 'one of ten draws returns more', ({ spread }) => spread.internalReturn?.p90 ?? null],
        ],
      },
    ],
    rows: alternatives,
    marked: ({ worth }) => worth.netPresentValue > 0,
    note: 'In brackets: eight of ten draws. Marked: worth more than it costs at this interest.',
  })
}

/** "22 (18 to 27)" */
const withRange = (value: string, range: Range | null, decimals: number): string =>
  range === null ? value : `${value} (${rangeText(range, decimals)})`

/** Thousands need no decimals, but where the draws lie within some hundreds. */
const thousandDecimals = ({ p10, p90 }: Range): number => (p90 - p10 < 2000 ? 1 : 0)

/** Minutes and months by seconds × units, beside those simulated. */
export function naiveTable({ alternatives, plan, money }: PaybackResult, currency: string): Table {
  const rows = alternatives.filter(({ naive }) => naive !== null)
  return tableOf<PaybackOf>({
    caption: 'Seconds × units beside what was simulated',
    columns: [
      wordColumn('Alternative', 'alternative', 'name of the alternative', ({ name }) => name),
      {
        head: 'Saved,\ns a unit',
        text: ({ naive }) => formatNumber(naive!.saving.secondsPerUnit, 1),
        data: [['saved_s', 'seconds a unit at the constraint, by mean times', ({ naive }) => naive!.saving.secondsPerUnit]],
      },
      {
        head: 'By seconds,\nmin a day',
        text: ({ naive }) => formatNumber(naive!.saving.minutesPerDay, 1),
        data: [['naive_min_per_day', 'minutes a day, seconds × units', ({ naive }) => naive!.saving.minutesPerDay]],
      },
      {
        head: 'Simulated,\nmin a day',
        text: ({ savings }) => formatNumber(savings.minutesPerDay, 1),
        data: [['saved_min_per_day', 'minutes of overtime a day, simulated', ({ savings }) => savings.minutesPerDay]],
      },
      {
        head: 'Payback by\nseconds',
        text: ({ naive }) => monthsText(naive!.worth.paybackMonths),
        data: [['naive_payback_months', 'months; empty: never', ({ naive }) => naive!.worth.paybackMonths]],
      },
      {
        head: 'Payback,\nsimulated',
        text: ({ worth }) => monthsText(worth.paybackMonths),
        data: [
          ['payback_months', 'months; empty: never', ({ worth }) => worth.paybackMonths],
          ['naive_annual', `money a year by seconds × units, ${currency}`, ({ naive }) => naive!.savings.annual],
        ],
      },
    ],
    rows,
    note: `Seconds × ${formatNumber(plan, 0)} units × ${formatNumber(money.shiftsPerDay, 0)} shifts. Common practice, no source: 4 s a unit × 800 units are about 53 min a shift, which holds only at the constraint, and only as far as the seconds become output instead of slack.`,
  })
}

/** Wage, crew, days, prices. */
export function inputsTable({ decision }: DecisionRuns, { money, plan }: PaybackResult): Table {
  const { currency } = decision
  const doubt = (share: number): string => (share === 0 ? '' : ` ± ${formatShare(share)}`)
  const rows: (readonly [string, string])[] = [
    ['Wage', `${formatNumber(money.wage.value, 2)} ${currency}/h${doubt(money.wage.doubt)}`],
    ['Crew on a shift', formatNumber(decision.money!.crew, 0)],
    ['Overtime factor', formatNumber(money.overtimeFactor, 2)],
    ['Working days a year', formatNumber(money.daysPerYear, 0)],
    ['Shifts a day', formatNumber(money.shiftsPerDay, 0)],
    ['Paid hours a shift', formatNumber(money.paidHours, 2)],
    ['Years looked at', formatNumber(money.years, 0)],
    ['Interest', formatShare(money.interest)],
    ['Hurdle', `${formatNumber(money.hurdleMonths, 0)} months (${decision.money!.hurdleSource})`],
    ['Overtime worked today', money.overtimeWorked === null ? 'not known' : `${formatNumber(money.overtimeWorked, 0)} min a shift`],
    ['Plan', `${formatNumber(plan, 0)} a shift`],
    ...decision.alternatives.flatMap(({ name, investment, runningCost, crew }): (readonly [string, string])[] => [
      [
        `“${name}”`,
        `${moneyText(investment.value, currency)}${doubt(investment.doubt)}, ${moneyText(runningCost.value, currency)} a year to run${doubt(runningCost.doubt)}${crew === null ? '' : `, crew ${crew}`}`,
      ],
    ]),
  ]
  return tableOf<readonly [string, string]>({
    caption: 'What money is reckoned with',
    columns: [
      wordColumn('Input', 'input', 'what it is', ([input]) => input),
      wordColumn('Value', 'value', 'with its unit', ([, value]) => value),
    ],
    rows,
  })
}
