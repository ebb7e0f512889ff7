/** The story of a choice among station orders, as cells: the order to take, what it gains over today's, and both drawn. */
import { capital, type ColumnOf, formatNumber, formatShare, type Table, tableOf } from '@loopwright/charts/table'
import { differences } from '@loopwright/charts'
import type { OrderResult } from '@loopwright/study'
import type { Scenario } from '@loopwright/scenario'
import {
  type AnswerCell,
  type CautionCell,
  type ChartCell,
  type Cell,
  type DataCell,
  type PlanCell,
  sectionCell,
  type SureCell,
  type TableCell,
  tableCell,
  warningCell,
} from '../cells/cell.ts'
import { chartCell } from '../cells/chartCell.ts'
import { type Standing, scenarioWarnings, standing, standingCells } from '../study/standing.ts'
import { unitsData } from '../study/unitsData.ts'
import { type Period, period } from '../sweep/period.ts'
import type { Tale } from '../cells/tale.ts'
import { lengthWarning, startSentence } from '../words/startWords.ts'
import type { StudyStoryOptions } from '../words/storyOptions.ts'
import { orderPlans } from './orderPlans.ts'
import { orderFigures, orderSentences, orderSure, placesWords, TODAY } from './orderWords.ts'

/** The tale of station orders, and its parts by name. */
export interface OrderStory extends Standing, Tale {
  readonly answer: AnswerCell
  readonly sure: SureCell
  /** said only where it holds */
  readonly warnings: readonly CautionCell[]
  /** each order against the best of the others, drawn; null where a stop came first */
  readonly chart: ChartCell | null
  /** every order against the best of the others; null where a stop came first */
  readonly table: TableCell | null
  /** today's order drawn, the one chosen where it is another, and the one given by hand; on the page only */
  readonly plans: readonly PlanCell[]
  /** units of every order in each simulated window: for files of tables */
  readonly units: DataCell
}

/** Right of the zero line an order makes more than the best of the others; the limits hold for all together. */
function orderChart(
  { line }: Scenario,
  { candidates, table, winner, today, alpha }: OrderResult,
  { one }: Period,
  id: string,
): ChartCell | null {
  if (table === null || table.rows.length < 2) return null
  const sorted = table.rows.toSorted((a, b) => b.mean - a.mean)
  const [best, second] = sorted
  const rows = sorted.map((row) => ({
    name: named(line, candidates[row.system]!.places),
    mean: row.mean - (row === best ? second! : best!).mean,
    low: row.low,
    high: row.high,
    before: null,
    after: null,
    named: row.system === (winner ?? today),
  }))
  const figure = differences(rows, { per: one, beside: 'the best of the others', level: 1 - alpha })
  return { ...chartCell(`${id}-differences`, figure), pageOnly: true, lead: true }
}

/** "Today’s order", "S5 at Z14" */
const named = (line: Scenario['line'], places: Parameters<typeof placesWords>[1]): string => {
  const words = placesWords(line, places)
  return words === TODAY ? capital(TODAY) : words
}

/** orders that the table shows, beside the chosen, today's and the one given */
const ROWS_MAX = 15

/**
 * The story's parts, by name.
 *
 * @example orderStory(scenario, await orderStations(scenario.line, { move: [1], zones: [3, 4], check: 2, firstStage: 10 }, { seed: '1', workers: 0 }), { scenarioFile: 'ring.yaml' }).question // => 'Which order of the stations makes most?'
 */
export function orderStory(scenario: Scenario, result: OrderResult, options: StudyStoryOptions): OrderStory {
  const { id = 'order' } = options
  const words = period(scenario)
  const { line } = scenario
  const sure = orderSure(result, words)
  const lines = result.candidates.map(({ places, units }) => ({ name: placesWords(line, places), units }))
  const parts = {
    answer: {
      kind: 'answer',
      id: `${id}-answer`,
      sentences: orderSentences(line, result, words),
      figures: orderFigures(line, result, words),
    } satisfies AnswerCell,
    warnings: [
      ...(result.partial ? [warningCell(`${id}-partial`, 'Stopped early', partialWords(result))] : []),
      ...scenarioWarnings(scenario, options),
      ...lengthWarning(scenario),
    ],
    chart: orderChart(scenario, result, words, id),
    table: result.table === null ? null : tableCell(`${id}-orders`, orderTable(scenario, result, words)),
    sure: {
      kind: 'sure',
      id: `${id}-sure`,
      sentences: sure.length === 0 ? [] : [...sure, startSentence(scenario)],
    } satisfies SureCell,
    plans: orderPlans(scenario, result, id),
    units: unitsData(`${id}-units`, 'order', lines, words),
    ...standing(scenario, options),
  }
  const { answer, warnings, table, plans, units } = parts
  const shown: readonly (Cell | null)[] = [
    answer,
    ...warnings,
    sectionCell(`${id}-section`, 'The orders beside each other'),
    parts.chart,
    table,
    parts.sure,
    ...(plans.length === 0
      ? []
      : [sectionCell(`${id}-section-plans`, plans.length === 1 ? 'The line as it stands' : 'Where the stations stand')]),
    ...plans,
    units,
  ]
  return {
    ...parts,
    question: 'Which order of the stations makes most?',
    cells: [...shown.filter((cell) => cell !== null), ...standingCells(parts)],
  }
}

function partialWords({ winner }: OrderResult): string {
  return winner === null
    ? 'The study was stopped before an order was chosen.'
    : 'The choice is made; its measurement beside today’s order was stopped, and its interval is wider than asked for.'
}

function orderTable({ line }: Scenario, result: OrderResult, { one, many }: Period): Table {
  const { candidates, table, winner, today, mine, firstStage, alpha } = result
  const rows = (table?.rows ?? []).toSorted((a, b) => b.mean - a.mean)
  type Row = (typeof rows)[number]
  const kept = rows.filter(({ system }, place) => place < ROWS_MAX || [winner, today, mine].includes(system))
  const left = rows.length - kept.length
  const named = ({ system }: Row): string => placesWords(line, candidates[system]!.places)
  const dropped = ({ system }: Row): number | null => candidates[system]!.droppedAt
  const number = (head: string, field: string, says: string, of: (row: Row) => number): ColumnOf<Row> => ({
    head,
    text: (row) => formatNumber(of(row), 1),
    data: [[field, says, of]],
  })
  return tableOf<Row>({
    caption: `Station orders against the best of the others, units per ${one}`,
    columns: [
      {
        head: 'Order',
        align: 'left',
        text: (row) => `${named(row) === TODAY ? capital(TODAY) : named(row)}${row.system === mine ? ' (given)' : ''}`,
        data: [
          ['order', 'where it differs from today’s', named],
          ['given', 'the order given by hand', ({ system }) => system === mine],
          ['chosen', 'the order chosen', ({ system }) => system === winner],
        ],
      },
      number(`Units per\n${one}`, 'units', `units per ${one}, mean of the first ${firstStage} simulated ${many}`, ({ mean }) => mean),
      number('At most\nworse', 'worse_at_most', 'units less than the best of the others, at most', ({ low }) => -low),
      number('At most\nbetter', 'better_at_most', 'units more than the best of the others, at most', ({ high }) => high),
      {
        head: 'Dropped\nafter',
        text: (row) => (dropped(row) === null ? 'stayed' : formatNumber(dropped(row)!, 0)),
        data: [['dropped_after', `simulated ${many} after which the choice dropped it; empty: it stayed`, dropped]],
      },
    ],
    rows: kept,
    marked: ({ system }) => system === winner,
    note: `Of the first ${firstStage} simulated ${many}, which all orders have; the limits hold together in ${formatShare(1 - alpha)} of such studies. Dropped after: ${many} after which an order was out of the choice.${left > 0 ? ` ${left === 1 ? '1 more order is' : `${left} more orders are`} left out.` : ''}`,
  })
}
