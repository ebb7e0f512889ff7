/** The story of a search for the warm-up, as cells. */
import { type Table, tableOf, type TableValue, withHalf, wordColumn } from '@loopwright/charts/table'
import type { SteadyResult } from '@loopwright/study'
import type { Scenario } from '@loopwright/scenario'
import { warmUp } from '@loopwright/charts'
import {
  type AnswerCell,
  type CautionCell,
  type ChartCell,
  sectionCell,
  type SureCell,
  type TableCell,
  tableCell,
  warningCell,
} from '../cells/cell.ts'
import { chartCell } from '../cells/chartCell.ts'
import { type Standing, scenarioWarnings, standing, standingCells } from '../study/standing.ts'
import { type LineNoun, period } from '../sweep/period.ts'
import type { Tale } from '../cells/tale.ts'
import type { StoryOptions } from '../words/storyOptions.ts'
import { largeFigures, type SteadyFigures, steadyFigures, steadySentences, steadySure } from './steadyWords.ts'

/** The tale of how long the start shows, and its parts by name. */
export interface SteadyStory extends Standing, Tale {
  readonly answer: AnswerCell
  /** said only where it holds: stopped early */
  readonly warnings: readonly CautionCell[]
  /** how output gets going, with the cut; null: there is nothing to draw */
  readonly chart: ChartCell | null
  /** warm-up, length, rate and products in line; null: no warm-up was found */
  readonly table: TableCell | null
  readonly sure: SureCell
}

/**
 * The story's parts, by name.
 *
 * @example steadyStory(scenario, await findSteadyState(scenario.line, { replications: 2, intervals: 60 }, { seed: '1', workers: 0 }), { scenarioFile: 'ring.yaml' }).question // => 'From when on is the start forgotten, and what does the line make then?'
 */
export function steadyStory(scenario: Scenario, result: SteadyResult, options: StoryOptions): SteadyStory {
  const { line } = period(scenario)
  const figures = steadyFigures(result)
  const stopped =
    result.status === 'stopped' ? [warningCell('steady-partial', 'Stopped early', 'Not all runs were done: nothing can be told yet.')] : []
  const parts = {
    answer: {
      kind: 'answer',
      id: 'steady-answer',
      sentences: steadySentences(result, line),
      figures: figures === null ? [] : largeFigures(figures, line),
    } satisfies AnswerCell,
    warnings: [...stopped, ...scenarioWarnings(scenario, options)],
    chart:
      result.series === null
        ? null
        : {
            ...chartCell('steady-start', warmUp({ ...result, series: result.series }, figures === null ? {} : { cut: figures.cut })),
            pageOnly: true,
            lead: true,
          },
    table: figures === null ? null : tableCell('steady-figures', figureTable(result, figures, line)),
    sure: { kind: 'sure', id: 'steady-sure', sentences: steadySure(result, scenario) } satisfies SureCell,
    ...standing(scenario, options),
  }
  const { answer, warnings, table, sure } = parts
  return {
    ...parts,
    question: 'From when on is the start forgotten, and what does the line make then?',
    cells: [
      answer,
      ...warnings,
      ...(parts.chart === null ? [] : [sectionCell('steady-section', 'How the line gets going'), parts.chart]),
      ...(table === null ? [] : [table]),
      sure,
      ...standingCells(parts),
    ],
  }
}

interface Row {
  readonly figure: string
  readonly text: string
  readonly value: TableValue
  readonly low: TableValue
  readonly high: TableValue
  readonly unit: string
}

function figureTable(result: SteadyResult, { cut, enough, rate, products }: SteadyFigures, line: LineNoun): Table {
  const { cutSeconds, enoughSeconds, outputPerHour, productsInLine } = result
  const length = (figure: string, text: string, value: number): Row => ({ figure, text, value, low: null, high: null, unit: 's' })
  const mean = (figure: string, text: string, of: SteadyResult['outputPerHour'], unit: string): Row => {
    return { figure, text, value: of!.mean, low: of!.low, high: of!.high, unit }
  }
  return tableOf<Row>({
    caption: 'Steady production',
    columns: [
      wordColumn('Figure', 'figure', 'what the row is about', ({ figure }) => figure),
      {
        head: 'Value',
        text: ({ text }) => text,
        data: [
          ['value', 'a length, or a mean', ({ value }) => value],
          ['low', 'lower limit of the 95 % interval of a mean; empty: a length', ({ low }) => low],
          ['high', 'upper limit of the 95 % interval of a mean; empty: a length', ({ high }) => high],
          ['unit', 'of the three numbers before', ({ unit }) => unit],
        ],
      },
    ],
    rows: [
      length('Warm-up to discard', cut, cutSeconds!),
      length('Steady production that is then enough', enough, enoughSeconds! - cutSeconds!),
      mean('Units an hour', withHalf(rate), outputPerHour, 'units/h'),
      mean(`Products on the ${line}`, withHalf(products), productsInLine, 'products'),
    ],
    note: 'Means with 95 % intervals; more runs narrow them. Lengths are rounded up.',
  })
}
