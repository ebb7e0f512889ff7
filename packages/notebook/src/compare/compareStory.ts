/** The story of a comparison, as cells: what averages say of the lines, and what the same random worlds say. */
import { formatNumber, formatShare, formatWithHalfWidth, type Table } from '@loopwright/charts'
import { type Law, law, lawTerms } from '@loopwright/line'
import { type Scenario, scenarioDifferences } from '@loopwright/scenario'
import { type CompareResult, workingSeconds } from '@loopwright/study'
import type { SweepStoryOptions } from '../carrierSweepStory.ts'
import { type AnswerCell, type CautionCell, oneView, type TableCell } from '../cell.ts'
import { type Standing, standing } from '../study/standing.ts'
import { NOT_KNOWN } from '../sweep/countWords.ts'
import { type Period, period } from '../sweep/period.ts'
import { compareSentences, compareSure, differenceWords } from './compareWords.ts'

/** With the inputs and cautions of the first line. */
export interface CompareStory extends Standing {
  readonly answer: AnswerCell
  /** said only where it holds: partial results, gridlock */
  readonly warnings: readonly CautionCell[]
  /** units per shift of each line, and how many more than the first */
  readonly table: TableCell
  /** what differs between the inputs of each line and those of the first */
  readonly changed: TableCell
  /** lap, slowest exchange, lap of a hole and the law's estimate of each line: what a calculation with averages sees */
  readonly averages: TableCell
}

export interface CompareStoryOptions extends SweepStoryOptions {
  /** begins the ids of the cells; default `compare` */
  readonly id?: string
}

/**
 * The story's parts, by name.
 *
 * @param scenarios  in the order of the lines of the result
 */
export function compareStory(scenarios: readonly Scenario[], result: CompareResult, options: CompareStoryOptions): CompareStory {
  const { id = 'compare' } = options
  const words = period(scenarios[0]!)
  const table = (name: string, content: Table): TableCell => ({
    kind: 'table',
    id: `${id}-${name}`,
    where: 'both',
    views: oneView(content),
  })
  return {
    answer: {
      kind: 'answer',
      id: `${id}-answer`,
      sentences: compareSentences(result, words),
      sure: compareSure(result, words),
    },
    warnings: warnings(result, words, id),
    table: table('table', linesTable(result, words)),
    changed: table('changed', changedTable(scenarios, result)),
    averages: table('averages', averagesTable(scenarios, result, words)),
    ...standing(scenarios[0]!, options),
  }
}

/** Averages of one line, by the law; seconds, and units per window. */
export interface LineAverages {
  readonly lapSeconds: number
  readonly exchangeSeconds: number
  readonly holeLapSeconds: number
  readonly unitsPerWindow: number
}

/** What a calculation with averages sees of a line: no chance, no stops, no waiting of one station for another. */
export function lineAverages({ line }: Pick<Scenario, 'line'>): LineAverages {
  const found: Law = law(line)
  const { lapSeconds, exchangeSeconds, holeLapSeconds, unitsPerLap } = found
  const unitsPerWindow = lawTerms(found, line.carriers.count).rate * unitsPerLap * workingSeconds(line)
  return { lapSeconds, exchangeSeconds, holeLapSeconds, unitsPerWindow }
}

const left = (head: string) => ({ head, align: 'left', pageOnly: false }) as const
const right = (head: string) => ({ head, align: 'right', pageOnly: false }) as const

function linesTable({ lines, pairs, level }: CompareResult, { one, plan }: Period): Table {
  const toFirst = new Map(pairs.filter(({ second }) => second === 0).map((pair) => [pair.first, pair.difference]))
  return {
    caption: `Lines in the same random worlds, per ${one}`,
    columns: [
      left('Line'),
      right(`Units per\n${one}`),
      right('More than\nthe first'),
      ...(plan === null ? [] : [right('Plan met in,\nof 100')]),
    ],
    rows: lines.map(({ name, mean, meetsPlan }, index) => {
      const difference = toFirst.get(index)
      return {
        cells: [
          name,
          mean === null ? NOT_KNOWN : formatWithHalfWidth(mean.mean, mean.halfWidth),
          difference === undefined ? '' : differenceWords(difference).withHalfWidth,
          ...(plan === null ? [] : [meetsPlan === null ? NOT_KNOWN : formatShare(meetsPlan.share).replace(/\s*%$/u, '')]),
        ],
        marked: index === 0,
      }
    }),
    note: `Means with 95 % intervals; differences at ${formatShare(level)} for all of them together, so that several may be read at once.`,
  }
}

function changedTable(scenarios: readonly Scenario[], { lines }: CompareResult): Table {
  const [first, ...others] = scenarios
  return {
    caption: `Inputs that differ from ${lines[0]!.name}`,
    columns: [left('Line'), left('Input'), left('Before'), left('After')],
    rows: others.flatMap((other, index) =>
      scenarioDifferences(first!, other).map(({ path, places, before, after }) => ({
        cells: [lines[index + 1]!.name, places.length === 0 ? path : `${path} (${places.join(', ')})`, before ?? 'none', after ?? 'none'],
        marked: false,
      })),
    ),
    note: null,
  }
}

function averagesTable(scenarios: readonly Scenario[], { lines }: CompareResult, { one }: Period): Table {
  return {
    caption: 'What averages say',
    columns: [
      left('Line'),
      right('Lap of a\ncarrier (s)'),
      right('Slowest\nexchange (s)'),
      right('Lap of a\nhole (s)'),
      right(`Units per\n${one}`),
    ],
    rows: scenarios.map((scenario, index) => {
      const { lapSeconds, exchangeSeconds, holeLapSeconds, unitsPerWindow } = lineAverages(scenario)
      const seconds = [lapSeconds, exchangeSeconds, holeLapSeconds].map((value) => formatNumber(value, 1))
      return { cells: [lines[index]!.name, ...seconds, formatNumber(unitsPerWindow, 0)], marked: index === 0 }
    }),
    note: 'Mean times alone: without stops, without chance, and as if no station ever waited for another.',
  }
}

function warnings({ lines, replications, partial }: CompareResult, { one }: Period, id: string): CautionCell[] {
  const still = lines.filter(({ gridlocks }) => gridlocks > 0)
  const cell = (name: string, title: string, markdown: string): CautionCell => ({
    kind: 'caution',
    id: `${id}-warning-${name}`,
    tone: 'warning',
    title,
    markdown,
  })
  return [
    ...(partial
      ? [cell('partial', 'Stopped early', `${lines[0]!.units.length} of ${replications} replications are in. The intervals are wider.`)]
      : []),
    ...(still.length > 0
      ? [
          cell(
            'gridlock',
            'Gridlock: the loop stands still',
            `${still.map(({ name, gridlocks, units }) => `- ${name}: in ${gridlocks} of ${units.length} replications`).join('\n')}\n\nThe ${one} counts with what was made before.`,
          ),
        ]
      : []),
  ]
}
