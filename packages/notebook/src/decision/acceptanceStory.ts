/** The story of an acceptance, as cells: the band and the plan before it. */
import { formatDuration, formatNumber, formatShare, type Table, tableOf, wordColumn } from '@loopwright/charts/table'
import {
  type AcceptanceSection,
  type SequentialPlan,
  sequentialPlan,
  type TestPlan,
  testPlan,
  type TrialBand,
  trialBand,
} from '@loopwright/decide'
import type { Scenario } from '@loopwright/scenario'
import type { TrialsResult } from '@loopwright/study'
import { type AnswerCell, type AnswerFigure, proseCell, type ProseCell, type SureCell, type TableCell, tableCell } from '../cells/cell.ts'
import type { Tale } from '../cells/tale.ts'
import { startSentence } from '../words/startWords.ts'
import { USE } from '../sweep/cautions.ts'

/** What an acceptance is planned with. */
export interface AcceptanceResult {
  readonly kind: 'acceptance'
  readonly trials: TrialsResult
  readonly band: TrialBand
  readonly plan: TestPlan
  readonly sequential: SequentialPlan
}

/**
 * Band, plan and check of an acceptance, from simulated trials.
 *
 * @throws RangeError  with too few trials
 * @example acceptanceOf({ share: 0.9, falseAlarm: 0.1, miss: 0.1, trialsMost: 3 }, trials).plan.passFrom // => 100
 */
export function acceptanceOf(
  section: Pick<AcceptanceSection, 'share' | 'falseAlarm' | 'miss' | 'trialsMost'>,
  trials: TrialsResult,
): AcceptanceResult {
  const ends = (paths: TrialsResult['healthy']): number[] => paths.map((path) => path.at(-1)!)
  const shares = trials.looks.map((look) => look / trials.seconds)
  return {
    kind: 'acceptance',
    trials,
    band: trialBand(ends(trials.healthy), section.share),
    plan: testPlan(ends(trials.healthy), ends(trials.slower), section),
    sequential: sequentialPlan(trials.healthy, trials.slower, shares, section.falseAlarm),
  }
}

/** The tale of an acceptance, and its parts by name. */
export interface AcceptanceStory extends Tale {
  readonly answer: AnswerCell
  readonly plan: TableCell
  /** count at each look below which the trial may end */
  readonly looks: TableCell
  readonly sure: SureCell
  readonly practice: ProseCell
}

const length = (seconds: number): string => (seconds % 3600 === 0 ? `${seconds / 3600}-hour` : `${formatNumber(seconds / 60, 0)}-minute`)
/** "112 to 126", or the one count there is */
export const bandText = ({ low, high }: TrialBand): string =>
  low === high ? formatNumber(low, 0) : `${formatNumber(low, 0)} to ${formatNumber(high, 0)}`
const WORDS: readonly string[] = ['no', 'one', 'two', 'three', 'four', 'five']
const tenths = (share: number): string => (share === 0.9 ? 'nine of ten' : `${formatShare(share)} of`)

/**
 * The tale of how a line will be accepted.
 *
 * @param name  of the alternative
 * @example acceptanceStory(scenario, 'loop', { of: 0, seconds: 3600, lookSeconds: 1800, share: 0.9, longer: 0.1, falseAlarm: 0.1, miss: 0.1, trialsMost: 3 }, acceptanceOf({ share: 0.9, falseAlarm: 0.1, miss: 0.1, trialsMost: 3 }, trials)).answer.sentences[0] // => 'A line that meets the forecast of “loop” makes 100 to 104 in a 1-hour trial, in nine of ten trials.'
 */
export function acceptanceStory(scenario: Scenario, name: string, section: AcceptanceSection, result: AcceptanceResult): AcceptanceStory {
  const { band, plan, sequential, trials } = result
  const parts = {
    answer: {
      kind: 'answer',
      id: 'acceptance-answer',
      sentences: answerSentences(name, section, result),
      figures: acceptanceFigures(section, result),
    } satisfies AnswerCell,
    plan: tableCell('acceptance-plan', planTable(section, plan)),
    looks: tableCell('acceptance-looks', lookTable(trials, sequential)),
    sure: {
      kind: 'sure',
      id: 'acceptance-sure',
      sentences: [
        `The band rests on ${formatNumber(band.n, 0)} simulated trials and holds at least ${formatShare(band.covers)} of further ones; more simulated trials make its ends surer, not narrower.`,
        `The check at each look was made from one half of these and tried on the other: all looks together stop ${formatShare(sequential.falseAlarm)} of the trials of a line that meets its forecast, and miss ${formatShare(sequential.miss)} of the slower one’s.`,
        startSentence(scenario),
      ],
    } satisfies SureCell,
    practice: proseCell(
      'acceptance-practice',
      '## Before the trial',
      'Fill the line first; count from an instant that both sides write down; log every stop with start, end and cause. Agree beforehand which stops are not the line’s. One branch (a body of beverage machinery) asks for 8 h with at least 6 h of running time, stops from outside of at most 25 %, and at most three trials in five days; function, performance and availability are tested apart (FEM 9.222).',
      'Safety functions are no part of this trial: a qualified, where required licensed, professional validates them.',
    ),
  }
  const { answer, looks, sure, practice } = parts
  return {
    ...parts,
    question: `What does “${name}” have to make in its trial?`,
    cells: [answer, parts.plan, looks, sure, practice, { ...proseCell('section-cautions', '## Cautions'), pageOnly: true }, USE],
  }
}

const trialsText = (plan: TestPlan, trial: string): string =>
  plan.trials === 1 ? `one ${trial} trial` : `${WORDS[plan.trials] ?? formatNumber(plan.trials, 0)} ${trial} trials together`

function acceptanceFigures(section: AcceptanceSection, { band, plan, trials }: AcceptanceResult): AnswerFigure[] {
  const trial = length(trials.seconds)
  return [
    plan.meets
      ? { label: 'Passed from', value: formatNumber(plan.passFrom, 0), sure: `units in ${trialsText(plan, trial)}` }
      : { label: 'A test that tells', value: 'none', sure: `of up to ${formatNumber(section.trialsMost, 0)} trials of this length` },
    { label: `Band of one ${trial} trial`, value: bandText(band), sure: `in ${tenths(band.share)} trials` },
    { label: 'False alarm', value: formatShare(plan.falseAlarm), sure: 'a line that meets its forecast fails' },
    { label: 'Miss', value: formatShare(plan.miss), sure: `one with tasks ${formatShare(section.longer)} longer passes` },
  ]
}

function answerSentences(name: string, section: AcceptanceSection, { band, plan, trials }: AcceptanceResult): string[] {
  const trial = length(trials.seconds)
  const many = trialsText(plan, trial)
  return [
    `A line that meets the forecast of “${name}” makes ${bandText(band)} in a ${trial} trial, in ${tenths(band.share)} trials.`,
    plan.meets
      ? `Passed from ${formatNumber(plan.passFrom, 0)} units on in ${many}: a line that meets its forecast fails in ${formatShare(plan.falseAlarm)} of such tests, and one whose tasks take ${formatShare(section.longer)} longer passes in ${formatShare(plan.miss)}.`
      : `No test of up to ${formatNumber(section.trialsMost, 0)} trials tells them apart as asked: the best, passed from ${formatNumber(plan.passFrom, 0)} units on in ${many}, still lets a line whose tasks take ${formatShare(section.longer)} longer pass in ${formatShare(plan.miss)} of cases. Make the trial longer.`,
  ]
}

function planTable(section: AcceptanceSection, plan: TestPlan): Table {
  const rows: (readonly [string, string, number])[] = [
    ['Trials', formatNumber(plan.trials, 0), plan.trials],
    ['Length of one', formatDuration(section.seconds), section.seconds],
    ['Passed from, units in all', formatNumber(plan.passFrom, 0), plan.passFrom],
    ['False alarm: a line that meets its forecast fails', formatShare(plan.falseAlarm), plan.falseAlarm],
    [`Miss: one whose tasks take ${formatShare(section.longer)} longer passes`, formatShare(plan.miss), plan.miss],
  ]
  return tableOf<readonly [string, string, number]>({
    caption: 'The test',
    columns: [
      wordColumn('What', 'what', 'which figure', ([what]) => what),
      { head: 'Value', text: ([, text]) => text, data: [['value', 'count, seconds, units or share', ([, , value]) => value]] },
    ],
    rows,
  })
}

interface Look {
  readonly seconds: number
  readonly limit: number | null
  readonly caught: number
}

function lookTable(trials: TrialsResult, { stopBelow, stoppedBy }: SequentialPlan): Table {
  const rows = trials.looks.map((seconds, at): Look => ({ seconds, limit: stopBelow[at]!, caught: stoppedBy[at]! }))
  return tableOf<Look>({
    caption: 'While it runs: when the trial may end early',
    columns: [
      {
        head: 'After',
        text: ({ seconds }) => formatDuration(seconds),
        data: [['after_s', 'seconds from the start of the trial', ({ seconds }) => seconds]],
      },
      {
        head: 'Stop below,\nunits',
        text: ({ limit }) => (limit === null ? 'go on' : formatNumber(limit, 0)),
        data: [['stop_below', 'units so far; empty: no count stops it', ({ limit }) => limit]],
      },
      {
        head: 'Slower line\ncaught by then',
        text: ({ caught }) => formatShare(caught),
        data: [['caught', 'share of trials of the slower line stopped by then', ({ caught }) => caught]],
      },
    ],
    rows,
    note: 'All looks together raise no more false alarms than asked for: looking often costs nothing only by this table.',
  })
}
