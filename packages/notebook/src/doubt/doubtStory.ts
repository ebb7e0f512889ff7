/** The story of the doubt of the inputs, as cells: a forecast beside the one that takes its times as exact, and which measurement would narrow it. */
import { formatNumber, formatShare, type Table, tableOf, wordColumn } from '@loopwright/charts/table'
import type { DoubtedInput } from '@loopwright/measure'
import type { Scenario } from '@loopwright/scenario'
import { type DoubtInterval, doubtInterval, inputParts, sampleQuantile } from '@loopwright/stats/fit'
import type { DoubtResult } from '@loopwright/study'
import { type AnswerCell, type CautionCell, type Cell, type SureCell, type TableCell, tableCell, warningCell } from '../cells/cell.ts'
import type { Tale } from '../cells/tale.ts'
import { period } from '../sweep/period.ts'

/** The tale of what the data do not know, and its parts by name. */
export interface DoubtStory extends Tale {
  readonly answer: AnswerCell
  readonly warnings: readonly CautionCell[]
  /** what a window makes, with and without the doubt */
  readonly bands: TableCell
  /** what each input adds, and what more of it would take away; null: stopped too early */
  readonly inputs: TableCell | null
  readonly sure: SureCell
}

/** of all intervals here */
const LEVEL = 0.9
/** more measurements that are tried */
const MORE = 20
const NOUNS: Readonly<Record<DoubtedInput['what'], readonly [one: string, many: string]>> = {
  time: ['cycle', 'cycles'],
  'time between stops': ['stop', 'stops'],
  repair: ['repair', 'repairs'],
  mix: ['unit', 'units'],
}

/** Measurements of an input: cycles at a task, times of what is none, such as a supply. */
const measurements = ({ name, what }: DoubtedInput, tasks: readonly string[]): string =>
  what === 'mix'
    ? 'ordered units'
    : what === 'time' && !tasks.some((task) => name.toLowerCase().startsWith(task.toLowerCase()))
      ? `times of ${name}`
      : `${NOUNS[what][1]} at ${name}`

/** What an input adds to the doubt of the mean output. */
export interface InputDoubt extends DoubtedInput {
  /** of the variance that the inputs add, 0 … 1 */
  readonly share: number
  /** half-width of the mean output, all inputs as they are; units per window */
  readonly now: number
  /** with 20 more measurements of this one */
  readonly narrowed: number
}

/** How well the mean output is known. */
export interface OutputDoubt {
  /** with the doubt of the inputs and the chance of the runs */
  readonly interval: DoubtInterval
  /** inputs taken as exact */
  readonly exact: DoubtInterval
  /** of the variance of single windows: what is doubt of the inputs, 0 … 1; null: nothing varies */
  readonly share: number | null
  /** in the order of the levels */
  readonly inputs: readonly InputDoubt[]
}

/**
 * How well the mean output is known, and what each input adds. With m more measurements the variance of an input's mean shrinks by n/(n + m).
 *
 * @param inputs  in the order of the levels that were redrawn
 * @returns       null: stopped too early
 * @example doubtOf(await inputDoubt(line, { redrawn: [1, 2, 3].map(() => ({ line, levels: [0] })) }, { seed: '1', workers: 0 }), [{ name: 'wire', n: 20, what: 'time', freedom: 19 }]).inputs[0].n // => 20
 */
export function doubtOf(
  { without, variances, split, chanceVariance }: Pick<DoubtResult, 'without' | 'variances' | 'split' | 'chanceVariance'>,
  inputs: readonly DoubtedInput[],
): OutputDoubt | null {
  if (split === null || chanceVariance === null) return null
  const parts = inputParts(
    split,
    inputs.map(({ freedom }, index) => ({ variance: variances[index]!, freedom })),
  )
  const interval = doubtInterval(without, parts, split, LEVEL)
  const sum = variances.reduce((all, one) => all + one, 0)
  const whole = split.inputVariance + chanceVariance
  return {
    interval,
    exact: doubtInterval(without, [], null, LEVEL),
    share: whole > 0 ? split.inputVariance / whole : null,
    inputs: inputs.map((input, index) => {
      const more = parts.map((part, at) =>
        // an order more tells of all shares of the mix
        at !== index && !(input.what === 'mix' && inputs[at]!.what === 'mix')
          ? part
          : {
              variance: part.variance * (Math.max(1, input.n) / (Math.max(1, input.n) + MORE)),
              freedom: part.freedom === null ? null : part.freedom + MORE,
            },
      )
      return {
        ...input,
        share: sum > 0 ? variances[index]! / sum : 0,
        now: interval.halfWidth,
        narrowed: doubtInterval(without, more, split, LEVEL).halfWidth,
      }
    }),
  }
}

/**
 * The story's parts, by name.
 *
 * @param inputs  in the order of the levels that were redrawn
 * @example doubtStory(scenario, await inputDoubt(scenario.line, { redrawn: [1, 2, 3].map(() => ({ line: scenario.line, levels: [0] })) }, { seed: '1', workers: 0 }), [{ name: 'wire', n: 20, what: 'time' }]).bands.kind // => 'table'
 */
export function doubtStory(scenario: Scenario, result: DoubtResult, inputs: readonly DoubtedInput[]): DoubtStory {
  const words = period(scenario)
  const doubt = doubtOf(result, inputs)
  const doubts = largestFirst(doubt)
  const warnings = [
    ...(result.partial
      ? [warningCell('doubt-partial', 'Stopped early', `${result.draws} redrawn lines are simulated; the numbers hold for these.`)]
      : []),
    ...(inputs.some(({ n }) => n < 5)
      ? [
          warningCell(
            'doubt-few',
            'Inputs that rest on almost nothing',
            `${inputs
              .filter(({ n }) => n < 5)
              .slice(0, 6)
              .map(({ name, n, what }) => `- ${name} (${what}): ${n}`)
              .join('\n')}\n\nThey are moved by ± 10 % or, where a usual stop stands in, as one that was seen once (own rules).`,
          ),
        ]
      : []),
  ]
  const parts = {
    answer: { kind: 'answer', id: 'doubt-answer', sentences: answerSentences(scenario, result, doubt, words.one) } satisfies AnswerCell,
    warnings,
    bands: tableCell('doubt-bands', bandTable(result, words.one)),
    inputs: doubts.length === 0 ? null : tableCell('doubt-inputs', inputTable(doubts, words.one)),
    sure: {
      kind: 'sure',
      id: 'doubt-sure',
      sentences: [
        `Two levels: ${result.draws} times all inputs are redrawn as others might have been measured (values by weights of the Bayesian bootstrap, their mean widened to Student’s t; times between stops by the gamma of their count, shares by a Dirichlet), and ${result.replications} ${words.many} of each are simulated, beside the line as measured in the same worlds. The interval of the mean adds the doubt of the inputs and the chance of the runs, by Student’s t with the degrees of freedom of Welch and Satterthwaite. What each input adds is a straight-line estimate; ${MORE} more measurements shrink its part by n/(n + ${MORE}).`,
      ],
    } satisfies SureCell,
  }
  const cells: Cell[] = [parts.answer, ...warnings, parts.bands, ...(parts.inputs === null ? [] : [parts.inputs]), parts.sure]
  return { ...parts, question: 'What may be promised, with what the data do not know?', cells }
}

const largestFirst = (doubt: OutputDoubt | null): InputDoubt[] => (doubt?.inputs ?? []).toSorted((a, b) => b.share - a.share)

const whole = (value: number): string => formatNumber(value, Math.abs(value) < 10 ? 1 : 0)

function answerSentences({ line, plan }: Scenario, { without, within }: DoubtResult, doubt: OutputDoubt | null, per: string): string[] {
  const drawn = within.flat()
  if (doubt === null) return ['Too little was simulated to tell what the data do not know.']
  const band = (values: readonly number[]): string =>
    `${formatNumber(sampleQuantile(values, 0.1), 0)} to ${formatNumber(sampleQuantile(values, 0.9), 0)}`
  const { interval, exact, share } = doubt
  const told = ({ mean, halfWidth }: DoubtInterval): string => `${formatNumber(mean, halfWidth < 10 ? 1 : 0)} ± ${whole(halfWidth)}`
  const worst = [...doubt.inputs].sort((a, b) => a.narrowed - b.narrowed || b.share - a.share)[0]
  const met = (values: readonly number[]): string =>
    formatShare(values.filter((units) => units >= plan!.unitsPerWindow).length / values.length)
  return [
    `A ${per} makes ${band(drawn)} units in eight of ten, with the inputs as well known as they are; ${band(without)} if they were known exactly.`,
    `On average it makes ${told(interval)} (90 %); if the inputs were known exactly, ${told(exact)}.`,
    ...(plan === null
      ? []
      : [
          `The plan of ${formatNumber(plan.unitsPerWindow, 0)} is met in ${met(drawn)} of ${per}s with that doubt; in ${met(without)} without it.`,
        ]),
    ...(share === null || share === 0 || worst === undefined || !(worst.share > 0)
      ? ['The doubt of the inputs is too small to show beside chance: more measurements would narrow nothing that so many runs can see.']
      : [
          `Of how much single ${per}s differ, ${formatShare(share)} is that doubt, which more measurements take away and more runs do not; the rest is chance.`,
          `What would narrow it most: ${MORE} more ${measurements(worst, line.tasks)}: ± ${whole(worst.now)} becomes ± ${whole(worst.narrowed)}.`,
        ]),
  ]
}

interface Band {
  readonly name: string
  readonly values: readonly number[]
}

function bandTable({ without, within }: DoubtResult, per: string): Table {
  const rows: Band[] = [
    { name: 'With the doubt of the inputs', values: within.flat() },
    { name: 'Inputs taken as exact', values: without },
  ].filter(({ values }) => values.length > 1)
  const column = (head: string, name: string, p: number) => ({
    head,
    text: ({ values }: Band) => formatNumber(sampleQuantile(values, p), 0),
    data: [
      [name, `units per ${per} that ${Math.round(100 * (1 - p))} of 100 reach`, ({ values }: Band) => sampleQuantile(values, p)] as const,
    ],
  })
  return tableOf<Band>({
    caption: `Units of one ${per}`,
    columns: [
      wordColumn('Forecast', 'forecast', 'with or without the doubt of the inputs', ({ name }) => name),
      column('P10', 'p10', 0.1),
      column('P50', 'p50', 0.5),
      column('P90', 'p90', 0.9),
      {
        head: 'Simulated',
        text: ({ values }) => formatNumber(values.length, 0),
        data: [['windows', `simulated ${per}s`, ({ values }) => values.length]],
      },
    ],
    rows,
    note: `P10: nine of ten ${per}s make at least this.`,
  })
}

function inputTable(doubts: readonly InputDoubt[], per: string): Table {
  return tableOf<InputDoubt>({
    caption: 'What each input adds to the doubt',
    columns: [
      wordColumn('Input', 'input', 'name', ({ name }) => name),
      wordColumn('What', 'what', 'time, time between stops, repair or mix', ({ what }) => what),
      { head: 'Measured', text: ({ n }) => formatNumber(n, 0), data: [['n', 'measurements there are', ({ n }) => n]] },
      {
        head: 'Of the doubt',
        text: ({ share }) => formatShare(share),
        data: [['share', 'of the variance that inputs add, 0 … 1', ({ share }) => share]],
      },
      {
        head: `${MORE} more: ± units`,
        text: ({ now, narrowed }) => `${whole(now)} → ${whole(narrowed)}`,
        data: [
          ['half_width_now', `half-width of the 90 % interval of the mean output per ${per}, units`, ({ now }) => now],
          ['half_width_then', `the same with ${MORE} more measurements of this input`, ({ narrowed }) => narrowed],
        ],
      },
    ],
    rows: doubts.slice(0, 12),
    note: doubts.length > 12 ? `The first 12 of ${doubts.length}.` : null,
  })
}
