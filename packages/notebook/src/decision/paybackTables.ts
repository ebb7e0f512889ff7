/** Tables of a payback: money of each alternative, seconds × units beside it, and what is reckoned with. */
import { formatNumber, formatShare, type Table, tableOf, wordColumn } from '@loopwright/charts/table'
import type { PaybackOf, PaybackResult } from '@loopwright/decide'
import { NOT_KNOWN } from '../sweep/countWords.ts'
import type { DecisionRuns } from './decisionRuns.ts'
import { moneyText, monthsText, rangeText } from './moneyWords.ts'

/** Payback, net present value and internal return, each with its spread. */
export function moneyTable({ alternatives, money }: PaybackResult, currency: string): Table {
  return tableOf<PaybackOf>({
    caption: `Money over ${formatNumber(money.years, 0)} years at ${formatShare(money.interest)}`,
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
        text: ({ worth }) =>
          worth.paybackMonths === null ? 'never' : formatNumber(worth.paybackMonths, worth.paybackMonths < 9.95 ? 1 : 0),
        data: [['payback_months', 'months; empty: never', ({ worth }) => worth.paybackMonths]],
      },
      {
        head: 'Eight of\nten draws',
        text: ({ spread }) => (spread.paybackMonths === null ? NOT_KNOWN : rangeText(spread.paybackMonths, 0)),
        data: [
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
      {
        head: `Net present\nvalue, ${currency}`,
        text: ({ worth, spread }) => moneyText(worth.netPresentValue, currency, spread.netPresentValue).replace(` ${currency}`, ''),
        data: [
          ['npv', 'net present value, money', ({ worth }) => worth.netPresentValue],
          ['npv_p10', 'nine of ten draws are worth more', ({ spread }) => spread.netPresentValue.p10],
          ['npv_p90', 'one of ten draws is worth more', ({ spread }) => spread.netPresentValue.p90],
        ],
      },
      {
        head: 'Internal\nreturn, %',
        text: ({ worth }) => (worth.internalReturn.rate === null ? NOT_KNOWN : formatNumber(100 * worth.internalReturn.rate, 1)),
        data: [['irr', 'internal rate of return, share a year; empty: none', ({ worth }) => worth.internalReturn.rate]],
      },
    ],
    rows: alternatives,
    marked: ({ withinHurdle }) => withinHurdle,
    tone: ({ withinHurdle }) => (withinHurdle ? 'good' : undefined),
    note: 'Marked: within the hurdle. Injuries, damage, floor and the like are no part of it.',
  })
}

/** Minutes and months by seconds × units, beside those simulated. */
export function naiveTable({ alternatives, plan, money }: PaybackResult, currency: string): Table {
  const rows = alternatives.filter(({ naive }) => naive !== null)
  return tableOf<PaybackOf>({
    caption: 'Seconds × units beside what was simulated',
    columns: [
      wordColumn('Alternative', 'alternative', 'name of the alternative', ({ name }) => name),
      {
        head: 'Saved at the\nconstraint, s',
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
