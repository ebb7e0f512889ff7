/** The story of a comparison, as cells: what the same simulated windows say of the lines, and what averages say. */
import {
  formatNumber,
  formatShare,
  formatWithHalfWidth,
  meanFields,
  type Table,
  tableOf,
  timeScale,
  wordColumn,
} from '@loopwright/charts/table'
import { isPlainLoop } from '@loopwright/line'
import { type Law, law, lawTerms, workingSeconds } from '@loopwright/line/bounds'
import type { Scenario } from '@loopwright/scenario'
import type { CompareResult } from '@loopwright/study/compare'
import { differences } from '@loopwright/charts'
import {
  type AnswerCell,
  type CautionCell,
  type ChartCell,
  type DataCell,
  sectionCell,
  type SureCell,
  type TableCell,
  tableCell,
  warningCell,
} from '../cells/cell.ts'
import { chartCell } from '../cells/chartCell.ts'
import { type Standing, scenarioWarnings, standing, standingCells } from '../study/standing.ts'
import { unitsData } from '../study/unitsData.ts'
import { NOT_KNOWN } from '../sweep/countWords.ts'
import { type Period, period } from '../sweep/period.ts'
import type { Tale } from '../cells/tale.ts'
import { planTone } from '../words/planWords.ts'
import { listEndsWarning } from '../words/listEnds.ts'
import { markdownOf } from '../words/markdownOf.ts'
import { lengthWarning, startSentence } from '../words/startWords.ts'
import { stoppedEarly } from '../words/stoppedEarly.ts'
import type { StudyStoryOptions } from '../words/storyOptions.ts'
import { changedTable } from './changedTable.ts'
import { compareFigures, compareSentences, compareSure, differenceWords, quoted } from './compareWords.ts'

/** With the inputs and cautions of the first line. */
export interface CompareStory extends Standing, Tale {
  readonly answer: AnswerCell
  readonly sure: SureCell
  /** said only where it holds: partial results, gridlock, a list of products that ran out */
  readonly warnings: readonly CautionCell[]
  /** what each line makes more or less than the first, drawn; null below 2 replications */
  readonly differences: ChartCell | null
  /** units per shift of each line, and how many more than the first */
  readonly table: TableCell
  /** what differs between the inputs of each line and those of the first */
  readonly changed: TableCell
  /** lap, slowest exchange, lap of a hole and the law's estimate of each line: what a calculation with averages sees; null: a line is no single loop */
  readonly averages: TableCell | null
  /** units of each line in each simulated window: for files of tables */
  readonly units: DataCell
}

/**
 * The story's parts, by name.
 *
 * @param scenarios  in the order of the lines of the result
 * @example compareStory([scenario, scenario], await compareLines(['a', 'b'].map((name) => ({ name, line: scenario.line, plan: null })), { replications: 2 }, { seed: '1', workers: 0 }), { scenarioFile: 'ring.yaml' }).question // => 'Which line makes more, and is the difference real?'
 */
export function compareStory(scenarios: readonly Scenario[], result: CompareResult, options: StudyStoryOptions): CompareStory {
  const { id = 'compare' } = options
  const [first] = scenarios
  const words = period(first!)
  const loops = scenarios.every(({ line }) => isPlainLoop(line))
  const parts = {
    answer: {
      kind: 'answer',
      id: `${id}-answer`,
      sentences: compareSentences(result, words),
      figures: compareFigures(result, words),
    } satisfies AnswerCell,
    warnings: [...compareWarnings(scenarios, result, words, id), ...scenarioWarnings(first!, options), ...lengthWarning(first!)],
    differences: differenceChart(result, words, id),
    table: tableCell(`${id}-lines`, linesTable(result, words)),
    sure: { kind: 'sure', id: `${id}-sure`, sentences: [...compareSure(result, words), startSentence(first!)] } satisfies SureCell,
    changed: tableCell(`${id}-changed`, changedTable(scenarios, result)),
    averages: loops ? tableCell(`${id}-averages`, averagesTable(scenarios, result, words)) : null,
    units: unitsData(`${id}-units`, 'line', result.lines, words),
    ...standing(first!, options),
  }
  const { answer, table, sure, changed, averages, units } = parts
  return {
    ...parts,
    question: 'Which line makes more, and is the difference real?',
    cells: [
      answer,
      ...parts.warnings,
      sectionCell(`${id}-section`, 'What each line makes'),
      ...(parts.differences === null ? [] : [parts.differences]),
      table,
      sure,
      sectionCell(`${id}-section-why`, 'What differs'),
      changed,
      ...(averages === null ? [] : [averages]),
      units,
      ...standingCells(parts),
    ],
  }
}

function differenceChart({ lines, pairs, level }: CompareResult, { one }: Period, id: string): ChartCell | null {
  const rows = pairs.flatMap(({ first, second, difference: { mean, low, high } }) =>
    second === 0
      ? [{ name: lines[first]!.name, mean, low, high, before: lines[0]!.mean?.mean ?? null, after: lines[first]!.mean?.mean ?? null }]
      : [],
  )
  if (rows.length === 0) return null
  const figure = differences(rows, { per: one, beside: quoted(lines[0]!.name), level })
  return { ...chartCell(`${id}-differences`, figure), pageOnly: true, lead: true }
}

/** Averages of one line, by the law; seconds, and units per window. */
export interface LineAverages {
  readonly lapSeconds: number
  readonly exchangeSeconds: number
  readonly holeLapSeconds: number
  readonly unitsPerWindow: number
}

/**
 * What a calculation with averages sees of a line: no chance, no stops, no waiting of one station for another.
 *
 * @example Object.keys(lineAverages(scenario)) // => ['lapSeconds', 'exchangeSeconds', 'holeLapSeconds', 'unitsPerWindow']
 */
export function lineAverages({ line }: Pick<Scenario, 'line'>): LineAverages {
  const found: Law = law(line)
  const { lapSeconds, exchangeSeconds, holeLapSeconds, unitsPerLap } = found
  const unitsPerWindow = lawTerms(found, line.carriers.count).rate * unitsPerLap * workingSeconds(line)
  return { lapSeconds, exchangeSeconds, holeLapSeconds, unitsPerWindow }
}

/** The lines, what they make, and how much more than the first. */
export function linesTable({ lines, pairs, level }: CompareResult, { one, plan, many }: Period): Table {
  const toFirst = new Map(pairs.filter(({ second }) => second === 0).map((pair) => [pair.first, pair.difference]))
  const difference = (index: number) => toFirst.get(index)
  type Line = CompareResult['lines'][number]
  return tableOf<Line>({
    caption: `Lines in the same simulated ${many}, per ${one}`,
    columns: [
      wordColumn('Line', 'line', 'name of the line', ({ name }) => name),
      {
        head: 'Carriers',
        text: ({ carriers }) => formatNumber(carriers, 0),
        data: [['carriers', 'number of carriers', ({ carriers }) => carriers]],
      },
      {
        head: `Units per\n${one}`,
        text: meanText,
        data: meanFields('units', `units per ${one}`, ({ mean }) => mean),
      },
      {
        head: 'More than\nthe first',
        text: (_, index) => (difference(index) === undefined ? '' : differenceWords(difference(index)!).withHalfWidth),
        data: [
          ['more', `units per ${one} more than the first line`, (_, index) => difference(index)?.mean ?? null],
          ['more_low', `lower limit, ${formatShare(level)} for all differences together`, (_, index) => difference(index)?.low ?? null],
          ['more_high', `upper limit, ${formatShare(level)} for all differences together`, (_, index) => difference(index)?.high ?? null],
        ],
      },
      ...(plan === null && lines.every((line) => line.plan === null)
        ? []
        : [
            {
              head: 'Plan\nmet in',
              text: ({ meetsPlan }: Line) => (meetsPlan === null ? NOT_KNOWN : formatShare(meetsPlan.share)),
              data: [
                ['plan_met', `share of ${many}, 0 … 1, that met the plan`, ({ meetsPlan }: Line) => meetsPlan?.share ?? null] as const,
                ['plan_met_low', 'lower limit of the chance, 95 %', ({ meetsPlan }: Line) => meetsPlan?.low ?? null] as const,
                ['plan_met_high', 'upper limit of the chance, 95 %', ({ meetsPlan }: Line) => meetsPlan?.high ?? null] as const,
              ],
            },
          ]),
      {
        head: `${one === 'shift' ? 'Shifts' : 'Windows'}\nrun`,
        text: ({ units }) => formatNumber(units.length, 0),
        data: [['replications', `simulated ${many}`, ({ units }) => units.length]],
      },
    ],
    rows: lines,
    marked: (_, index) => index === 0,
    tone: ({ planVerdict, gridlocks }) => (gridlocks > 0 ? 'bad' : planTone(planVerdict)),
    note:
      lines.every(({ mean }) => mean?.halfWidth === 0) && pairs.every(({ difference: { halfWidth } }) => halfWidth === 0)
        ? null
        : `Means with 95 % intervals; differences at ${formatShare(level)} for all of them together, so that several may be read at once.`,
  })
}

/** A line of which some runs stood still has no mean of both kinds of runs. */
function meanText({ mean, units, gridlocks }: CompareResult['lines'][number]): string {
  if (gridlocks > 0) return `${gridlocks === units.length ? 'all' : `${gridlocks} of ${units.length}`} stood still`
  return mean === null ? NOT_KNOWN : formatWithHalfWidth(mean.mean, mean.halfWidth)
}

function averagesTable(scenarios: readonly Scenario[], { lines }: CompareResult, { one }: Period): Table {
  const rows = scenarios.map((scenario, index) => ({ name: lines[index]!.name, ...lineAverages(scenario) }))
  type Row = (typeof rows)[number]
  const scale = timeScale(
    rows.flatMap(({ lapSeconds, exchangeSeconds, holeLapSeconds }) => [lapSeconds, exchangeSeconds, holeLapSeconds]),
    1,
  )
  const seconds = (head: string, name: string, of: (row: Row) => number) => ({
    head: `${head} (${scale.unit})`,
    text: (row: Row) => scale.text(of(row)),
    data: [[name, `${head.replace('\n', ' ')} (s), mean times`, of] as const],
  })
  return tableOf<Row>({
    caption: 'What averages say',
    columns: [
      wordColumn('Line', 'line', 'name of the line', ({ name }) => name),
      seconds('Lap of a\ncarrier', 'lap_s', ({ lapSeconds }) => lapSeconds),
      seconds('Slowest\nexchange', 'exchange_s', ({ exchangeSeconds }) => exchangeSeconds),
      seconds('Lap of a\nfree zone', 'hole_lap_s', ({ holeLapSeconds }) => holeLapSeconds),
      {
        head: `Units per\n${one}`,
        text: ({ unitsPerWindow }) => formatNumber(unitsPerWindow, 0),
        data: [['units', `units per ${one} by the law of the loop`, ({ unitsPerWindow }) => unitsPerWindow]],
      },
    ],
    rows,
    marked: (_, index) => index === 0,
    note: 'Mean times of carriers and stations alone: no stops, no chance, no shared operators, arrivals, receivers or lists that end, and as if no station ever waited for another.',
  })
}

/** Said only where it holds: partial results, gridlock, a list of products that ran out. */
export function compareWarnings(scenarios: readonly Scenario[], result: CompareResult, words: Period, id: string): CautionCell[] {
  const { lines } = result
  const still = lines.filter(({ gridlocks }) => gridlocks > 0)
  const { one, many, line } = words
  return [
    ...stoppedEarly(id, result, lines[0]!.units.length, words),
    ...(still.length > 0
      ? [
          warningCell(
            `${id}-gridlock`,
            `Gridlock: the ${line} stands still`,
            `${still.map(({ name, gridlocks, units }) => `- ${markdownOf(quoted(name))}: in ${gridlocks} of ${units.length} ${many}`).join('\n')}\n\nSuch a ${one} counts with what was made before, so that the difference tells little of a line that keeps moving.`,
          ),
        ]
      : []),
    ...listEndsWarning(
      `${id}-products`,
      lines.map(({ name, outOfProducts, units }, index) => ({
        name: quoted(name),
        line: scenarios[index]!.line,
        outOfProducts,
        runs: units.length,
      })),
      words,
    ),
  ]
}
