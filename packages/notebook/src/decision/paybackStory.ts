/** The story of a payback, as cells: what each alternative is worth against today, beside what seconds × units would have said. */
import { breakEven } from '@loopwright/charts/decision'
import { capital, formatNumber } from '@loopwright/charts/table'
import type { PaybackOf, PaybackResult } from '@loopwright/decide'
import {
  type AnswerCell,
  type AnswerFigure,
  type CautionCell,
  type ChartCell,
  proseCell,
  type SureCell,
  type TableCell,
  tableCell,
  warningCell,
} from '../cells/cell.ts'
import { chartCell } from '../cells/chartCell.ts'
import type { Tale } from '../cells/tale.ts'
import { USE } from '../sweep/cautions.ts'
import { alternativesTable, assumptionsTable, limitCautions } from './alternativeTables.ts'
import { type DecisionRuns, paybackOf } from './decisionRuns.ts'
import { moneyText, monthsText, rangeText } from './moneyWords.ts'
import { inputsTable, moneyTable, naiveTable, worthTable } from './paybackTables.ts'

/** The tale of a payback, and its parts by name. */
export interface PaybackStory extends Tale {
  readonly answer: AnswerCell
  readonly warnings: readonly CautionCell[]
  /** what each alternative saves, and its payback with its spread */
  readonly table: TableCell
  /** net present value and internal return, with their spread */
  readonly worth: TableCell
  /** the same by seconds × units, beside what was simulated; null where no mean times are known */
  readonly naive: TableCell | null
  /** payback against wage, volume and investment: of the alternative that pays back first; of others on the page */
  readonly charts: readonly ChartCell[]
  readonly sure: SureCell
  /** what the alternatives make and ask of people */
  readonly alternatives: TableCell
  readonly assumptions: TableCell
  /** wage, crew, days and so on */
  readonly money: TableCell
}

/**
 * The tale of what alternatives are worth against today.
 *
 * @throws RangeError  without money, plan or shifts: what is missing is named
 * @example paybackStory(runs).question // => 'Is the loop worth its money against the push line of today?'
 */
export function paybackStory(runs: DecisionRuns): PaybackStory {
  const result = paybackOf(runs)
  const { decision } = runs
  const { currency } = decision
  const best = result.alternatives.reduce((first, one) => (months(one) < months(first) ? one : first))
  const parts = {
    answer: {
      kind: 'answer',
      id: 'payback-answer',
      sentences: answerSentences(result, best, currency),
      figures: paybackFigures(result),
    } satisfies AnswerCell,
    warnings: [...warnings(runs, result), ...limitCautions(runs)],
    table: tableCell('payback-money', moneyTable(result, currency)),
    worth: tableCell('payback-worth', worthTable(result, currency)),
    naive: result.alternatives.every(({ naive }) => naive === null) ? null : tableCell('payback-naive', naiveTable(result, currency)),
    charts: result.alternatives.flatMap((of, index): ChartCell[] => {
      // what never pays back has no curve to draw
      if (of.worth.paybackMonths === null) return []
      const cell = chartCell(`payback-break-even-${index + 1}`, breakEvenFigure(result, of, currency))
      return [of === best ? cell : { ...cell, pageOnly: true }]
    }),
    sure: { kind: 'sure', id: 'payback-sure', sentences: sureSentences(result) } satisfies SureCell,
    alternatives: tableCell('payback-alternatives', alternativesTable(runs)),
    assumptions: { ...tableCell('payback-assumptions', assumptionsTable(runs)), pageOnly: true },
    money: { ...tableCell('payback-inputs', inputsTable(runs, result)), pageOnly: true },
  }
  const { answer, table, worth, naive, charts, sure, alternatives, assumptions, money } = parts
  return {
    ...parts,
    question: decision.question ?? 'What is each alternative worth?',
    cells: [
      answer,
      ...parts.warnings,
      table,
      worth,
      ...(naive === null ? [] : [naive]),
      ...charts.toSorted((a, b) => Number(a.pageOnly ?? false) - Number(b.pageOnly ?? false)),
      sure,
      alternatives,
      assumptions,
      money,
      { ...proseCell('section-cautions', '## Cautions'), pageOnly: true },
      USE,
    ],
  }
}

const months = ({ worth }: PaybackOf): number => worth.paybackMonths ?? Number.POSITIVE_INFINITY
const quoted = (name: string): string => `“${name}”`

function answerSentences(result: PaybackResult, best: PaybackOf, currency: string): string[] {
  const { alternatives, money } = result
  const within = alternatives.filter((of) => of.withinHurdle)
  const hurdle = `the hurdle of ${formatNumber(money.hurdleMonths, 0)} months`
  const first =
    within.length > 0
      ? `${within.map(({ name }) => quoted(name)).join(' and ')} ${within.length === 1 ? 'pays' : 'pay'} back within ${hurdle}.`
      : `No alternative pays back within ${hurdle}.`
  const idle =
    result.overtimeToday > 0
      ? []
      : [`The line of today needs no overtime for its plan of ${formatNumber(result.plan, 0)}: there is none to save.`]
  return [
    first,
    ...idle,
    ...alternatives.map((of) => oneSentence(of, currency)),
    ...(best.naive === null ? [] : [naiveSentence(result, best)]),
  ]
}

/** more than these fill the first screen */
const FIGURES_MAX = 3

function paybackFigures({ alternatives }: PaybackResult): AnswerFigure[] {
  return alternatives
    .filter(({ worth }) => worth.paybackMonths !== null)
    .toSorted((a, b) => months(a) - months(b))
    .slice(0, FIGURES_MAX)
    .map(({ name, worth, spread }) => ({
      label: `${quoted(name)} pays back in`,
      value: monthsText(worth.paybackMonths),
      sure: spread.paybackMonths === null ? '' : `in eight of ten draws ${rangeText(spread.paybackMonths, 0)}`,
    }))
}

function oneSentence({ name, worth, spread, savings, overtimeBefore, overtimeAfter }: PaybackOf, currency: string): string {
  const saves = `${savings.annual < 0 ? 'costs' : 'saves'} ${moneyText(Math.abs(savings.annual), currency, spread.annual)} a year`
  const overtime =
    overtimeBefore === 0 && overtimeAfter === 0
      ? 'it needs no overtime either'
      : `overtime goes from ${formatNumber(overtimeBefore, 1)} to ${formatNumber(overtimeAfter, 1)} min a shift`
  if (worth.paybackMonths === null) return `${quoted(name)} never pays back: it ${saves}, and ${overtime}.`
  const range = spread.paybackMonths === null ? '' : ` (in eight of ten draws ${rangeText(spread.paybackMonths, 0)})`
  return `${quoted(name)} pays back in ${monthsText(worth.paybackMonths)}${range}: it ${saves}, and ${overtime}.`
}

function naiveSentence({ money, plan }: PaybackResult, { name, naive, savings }: PaybackOf): string {
  const { secondsPerUnit, minutesPerDay } = naive!.saving
  if (secondsPerUnit < 0.05)
    return `Seconds × units would have seen nothing in ${quoted(name)}: its slowest exchange takes as long as that of today; simulated, ${formatNumber(savings.minutesPerDay, 0)} min of overtime a day are saved.`
  const claim = `Seconds × units would have said ${monthsText(naive!.worth.paybackMonths)} for ${quoted(name)}: ${formatNumber(secondsPerUnit, 1)} s at the constraint × ${formatNumber(plan, 0)} units × ${formatNumber(money.shiftsPerDay, 0)} shifts are ${formatNumber(minutesPerDay, 0)} min a day`
  return `${claim}; simulated, ${formatNumber(savings.minutesPerDay, 0)} min of overtime a day are saved.`
}

function warnings({ result: { partial } }: DecisionRuns, { money, alternatives, overtimeToday }: PaybackResult): CautionCell[] {
  return [
    ...(partial
      ? [
          warningCell(
            'partial',
            'Stopped early',
            'Not all shifts are simulated, or not all people watched. The numbers hold for these; the spread is wider.',
          ),
        ]
      : []),
    ...(money.overtimeWorked === null && overtimeToday > 0
      ? [
          warningCell(
            'overtime',
            'Is that overtime really worked?',
            `The model asks for ${formatNumber(overtimeToday, 0)} min of overtime a shift today. What is not worked is not saved: compare it with the pay slips, and write what is worked as \`overtimeWorked\` under \`money\`.`,
          ),
        ]
      : []),
    ...(money.overtimeWorked !== null && alternatives.some(({ saved }) => saved.mean > money.overtimeWorked!)
      ? [
          warningCell(
            'worked',
            'More overtime in the model than is worked',
            `The model asks for ${formatNumber(overtimeToday, 0)} min of overtime a shift today, and ${formatNumber(money.overtimeWorked, 0)} are worked: no more than these are counted as saved. Find out why before believing the rest.`,
          ),
        ]
      : []),
    ...(alternatives.some(({ worth }) => worth.internalReturn.status === 'several sign changes')
      ? [
          warningCell(
            'return',
            'No internal rate of return',
            'Money goes out and in more than once, so that there may be several rates; none is given.',
          ),
        ]
      : []),
  ]
}

function breakEvenFigure({ money, plan }: PaybackResult, { name, worth, curves, breakEven: points }: PaybackOf, currency: string) {
  const texts = {
    wage: (value: number): string => `${formatNumber(value, value < 100 ? 1 : 0)} ${currency}/h`,
    volume: (value: number): string => `${formatNumber(value, plan < 100 ? 1 : 0)} a shift`,
    investment: (value: number): string => `${formatNumber(value, value < 20_000 ? 0 : -3)} ${currency}`,
  }
  const lines = curves.map(({ input, points: each }) => ({
    input,
    text: texts[input],
    points: each.map(({ factor, value, paybackMonths }) => ({ factor, value, months: paybackMonths })),
    breakEven: points[input]?.value ?? null,
  }))
  return breakEven(lines, { name, hurdleMonths: money.hurdleMonths, months: worth.paybackMonths })
}

function sureSentences({ alternatives, money }: PaybackResult): string[] {
  const [{ spread, saved }] = alternatives as [PaybackOf]
  const doubt = alternatives.some(({ spread: each }) => each.paybackMonths !== null)
  return [
    `Overtime is taken shift by shift in ${formatNumber(saved.n, 0)} simulated shifts, the same for all alternatives, and then averaged: averages alone would say that a line above its plan needs none.`,
    ...(doubt
      ? [
          `The draws, ${formatNumber(spread.draws, 0)} of each, take shifts as they differ, years as they differ, and wage, investment and running cost within their doubt; more simulated shifts narrow the first of these only.`,
        ]
      : []),
    `${capital('the hurdle')} of ${formatNumber(money.hurdleMonths, 0)} months is what a board asks for, not what a project is worth: the net present value is.`,
  ]
}
