/** The story of a time study, as cells: how long each task takes, how surely, what looks odd, and what will be simulated. Nothing is run. */
import { quantilePlot, runChart, timesSpread } from '@loopwright/charts/measured'
import { formatNumber, formatShare } from '@loopwright/charts/table'
import { type Allowance, everyNth, fencesOf, type TaskTimes, type TimeTable } from '@loopwright/measure'
import { distributionCdf, quantile } from '@loopwright/stats'
import {
  type AnswerCell,
  type AnswerFigure,
  type CautionCell,
  type Cell,
  type ChartCell,
  type ChoiceCell,
  type ProseCell,
  proseCell,
  type SureCell,
  type TableCell,
  tableCell,
  type Views,
} from '../cells/cell.ts'
import { chartFigure } from '../cells/chartCell.ts'
import type { Figure } from '../cells/figure.ts'
import type { Tale } from '../cells/tale.ts'
import { USE } from '../sweep/cautions.ts'
import { counted } from '../words/countedWords.ts'
import { readCell, readWarnings, refusedCells } from './accountCells.ts'
import { fitTable, peopleTable, taskTable } from './timesTables.ts'
import { timesWarnings } from './timesWarnings.ts'
import { timesName } from './timesWords.ts'

/** How the tale of a time study is told. */
export interface TimesStoryOptions {
  /** how well the means shall be known. Default: 0.05 */
  readonly relative?: number
  readonly allowance?: Allowance | null
  /** rating of times that have none of their own. Default: 1 */
  readonly rating?: number
}

/** The tale of a time study, and its parts by name. */
export interface TimesStory extends Tale {
  readonly answer: AnswerCell
  readonly warnings: readonly CautionCell[]
  /** rows read + rows refused = rows in the file */
  readonly read: ProseCell
  readonly tasks: TableCell
  /** null: nobody is named, or one person */
  readonly people: TableCell | null
  readonly sure: SureCell
  readonly choice: ChoiceCell | null
  /** how many times fall where, times against the curve, times in their order */
  readonly charts: readonly ChartCell[]
  readonly fits: TableCell | null
  readonly refused: readonly TableCell[]
}

/** id of the choice that switches the task */
const CHOICE = 'task'
/** more tasks would make the page heavy; all are in the tables */
const CHARTED = 40

/**
 * The story's parts, by name.
 *
 * @param tables   as read
 * @param studies  judged, in the order of the tables
 * @throws RangeError  without a task
 * @example timesStory([readTimes(readTable(new TextEncoder().encode('task,seconds\nwire,45\nwire,47\n'), 'times.csv'))], timeStudy([{ task: 'wire', variant: null, operator: null, observedSeconds: 45, rating: null, when: null, line: 2, place: '' }])).question // => 'How long does each task take, and how surely is that known?'
 */
export function timesStory(tables: readonly TimeTable[], studies: readonly TaskTimes[], options: TimesStoryOptions = {}): TimesStory {
  if (studies.length === 0) throw new RangeError('a time study needs at least one time')
  const { relative = 0.05 } = options
  const charted = studies.slice(0, CHARTED).map(drawn)
  const people = studies.filter((one) => one.people !== null)
  const fitted = studies.filter(({ choice }) => choice !== null)
  const parts = {
    answer: {
      kind: 'answer',
      id: 'times-answer',
      sentences: answerSentences(studies, relative),
      figures: timesFigures(studies, relative),
    } satisfies AnswerCell,
    warnings: [...readWarnings('times', tables), ...timesWarnings(studies)],
    read: readCell('times', tables),
    tasks: tableCell('times-tasks', taskTable(studies, relative)),
    people: people.length === 0 ? null : tableCell('times-people', peopleTable(people)),
    sure: { kind: 'sure', id: 'times-sure', sentences: sureSentences(relative, options) } satisfies SureCell,
    choice:
      charted.length < 2
        ? null
        : ({
            kind: 'choice',
            id: CHOICE,
            legend: 'Task',
            options: charted.map((one, index) => ({ key: `${index + 1}`, label: timesName(one) })),
            shown: '1',
          } satisfies ChoiceCell),
    charts: chartCells(charted),
    fits: fitted.length === 0 ? null : { ...tableCell('times-fits', fitTable(fitted)), pageOnly: true },
    refused: refusedCells('times', tables),
  }
  const cells: Cell[] = [
    parts.answer,
    ...parts.warnings,
    parts.tasks,
    parts.sure,
    ...(parts.people === null ? [] : [parts.people]),
    { ...proseCell('section-times', '## Single times'), pageOnly: true },
    ...(parts.choice === null ? [] : [parts.choice]),
    ...parts.charts,
    ...(parts.fits === null ? [] : [parts.fits]),
    proseCell('section-read', '## What was read'),
    parts.read,
    ...parts.refused,
    USE,
  ]
  return { ...parts, question: 'How long does each task take, and how surely is that known?', cells }
}

/** a picture holds no more dots */
const DOTS = 2000

/** Times as they are drawn. */
interface DrawnTimes extends TaskTimes {
  /** of all times; null: too few to say */
  readonly fences: ReturnType<typeof fencesOf>
  /** each dot stands for so many times; 1: all are drawn */
  readonly every: number
}

/** Of very many times every so manyth is drawn, which its name says. */
function drawn(study: TaskTimes): DrawnTimes {
  const [fences, every] = [fencesOf(study.values), Math.ceil(study.n / DOTS)]
  if (every === 1) return { ...study, fences, every }
  const name = `one of every ${every} times`
  return {
    ...study,
    fences,
    every,
    task: study.variant === null ? `${study.task} (${name})` : study.task,
    variant: study.variant === null ? null : `${study.variant} (${name})`,
    values: everyNth(study.values, DOTS),
    observations: everyNth(study.observations, DOTS),
  }
}

const isKnown = ({ cycles }: TaskTimes): boolean => cycles !== null && cycles.more === 0

function timesFigures(studies: readonly TaskTimes[], relative: number): AnswerFigure[] {
  const most = studies.toSorted((a, b) => (b.cycles?.more ?? 0) - (a.cycles?.more ?? 0))[0]!
  const more = most.cycles?.more ?? 0
  return [
    {
      label: `Means known to ± ${formatShare(relative)}`,
      value: formatNumber(studies.filter(isKnown).length, 0),
      sure: `of ${formatNumber(studies.length, 0)}`,
    },
    ...(more === 0 ? [] : [{ label: 'Most to time yet', value: timesName(most), sure: counted(more, 'more cycle') }]),
  ]
}

function answerSentences(studies: readonly TaskTimes[], relative: number): string[] {
  const times = studies.reduce((sum, { n }) => sum + n, 0)
  const within = formatShare(relative)
  const known = studies.filter(isKnown).length
  const what = studies.some(({ variant }) => variant !== null)
    ? counted(studies.length, 'task and variant', 'tasks and variants')
    : counted(studies.length, 'task')
  const need = studies
    .filter(({ cycles }) => cycles !== null && cycles.more > 0)
    .toSorted((a, b) => b.cycles!.more - a.cycles!.more)
    .map((one) => `${timesName(one)} ${counted(one.cycles!.more, 'more', 'more')}`)
  const single = studies.filter(({ cycles }) => cycles === null).map(timesName)
  const first = `${what}, timed ${counted(times, 'time')}; ${known === studies.length ? (known === 1 ? 'its mean is' : 'all means are') : known === 0 ? (studies.length === 1 ? 'its mean is not' : 'no mean is') : `${counted(known, 'mean is', 'means are')}`} known to ± ${within} or better.`
  return [
    first,
    ...(need.length === 0
      ? []
      : [
          `For ± ${within} time ${need.slice(0, 4).join(', ')} ${need.length === 1 && studies.find((one) => (one.cycles?.more ?? 0) === 1) ? 'cycle' : 'cycles'}${need.length > 4 ? `, and ${counted(need.length - 4, 'other')}` : ''}.`,
        ]),
    ...(single.length === 0 ? [] : [`One time says nothing of how it spreads: ${single.slice(0, 4).join(', ')}.`]),
  ]
}

function sureSentences(relative: number, { allowance = null, rating = 1 }: TimesStoryOptions): string[] {
  const breaks = {
    calendar: 'breaks are in the calendar of the scenario and not in the allowance',
    allowance: 'breaks are in the allowance, so that the calendar of the scenario must have none',
  }
  return [
    `Half-widths are 95 % intervals of the mean. Cycles to time: the smallest m with m ≥ (t·s/(k·mean))², k ${formatShare(relative)}, t of m − 1 degrees (work study; the handbooks take 2 for t). They secure the mean alone: for the spread and the long times ask for 50 (common practice, no source).`,
    allowance === null
      ? `No allowance is added: these are times of the work alone${rating === 1 ? '' : `, rated at ${formatShare(rating)}`}. Personal time, fatigue and breaks belong into the calendar or into \`--allowance\`, once.`
      : `An allowance of ${formatShare(allowance.share)} of the ${allowance.of === 'work' ? 'work' : 'shift'} is in the times; ${breaks[allowance.breaks]}.`,
  ]
}

function chartCells(studies: readonly DrawnTimes[]): ChartCell[] {
  const views = (made: readonly { readonly key: string; readonly content: Figure }[]): Views<Figure> => ({
    choice: studies.length < 2 ? null : CHOICE,
    shown: studies.length < 2 ? '' : '1',
    of: made,
  })
  const key = (index: number): string => (studies.length < 2 ? '' : `${index + 1}`)
  const spread = studies.map((one, index) => ({
    key: key(index),
    content: chartFigure(timesSpread({ name: timesName(one), values: one.values, mean: one.mean, ...curveOf(one) })),
  }))
  const ranks = studies.map((one, index) => ({
    key: key(index),
    content: chartFigure(
      quantilePlot({
        name: timesName(one),
        values: one.values,
        mean: one.mean,
        quantile: (u) => quantile(one.distribution, u),
        curve: curveOf(one).curve || standsWords(one),
      }),
    ),
  }))
  const runs = studies.map((one, index) => ({
    key: key(index),
    content: chartFigure(
      runChart({
        name: timesName(one),
        times: one.values.map((seconds, at) => ({
          seconds,
          operator: one.observations[at]!.operator ?? '',
          line: one.observations[at]!.line,
        })),
        mean: one.mean,
        fences: one.fences,
        slope: one.trend !== null && one.trend.p < 0.01 ? one.trend.slope * one.every : null,
      }),
    ),
  }))
  return [
    { kind: 'chart', id: 'times-spread', views: views(spread), pageOnly: true },
    { kind: 'chart', id: 'times-ranks', views: views(ranks), pageOnly: true },
    { kind: 'chart', id: 'times-run', views: views(runs), pageOnly: true },
  ]
}

function curveOf({ distribution, stands, choice }: TaskTimes): { cdf: ((x: number) => number) | null; curve: string } {
  if (stands === 'values' || stands === 'constant') return { cdf: null, curve: '' }
  return { cdf: (x) => distributionCdf(distribution, x), curve: choice?.chosen?.fit.family ?? 'lognormal' }
}

const standsWords = ({ stands }: TaskTimes): string => (stands === 'values' ? 'the values themselves' : 'one time')
