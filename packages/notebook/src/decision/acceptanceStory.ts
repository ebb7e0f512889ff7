/** The story of an acceptance, as cells: the band and the plan before it. */
import { type TrialLook, trialLooks } from '@loopwright/charts/decision'
import { formatDuration, formatNumber, formatShare, type Table, tableOf, wordColumn } from '@loopwright/charts/table'
import type { AcceptanceSection } from '@loopwright/decide'
import { type SequentialPlan, sequentialPlan, type TestPlan, testPlan, type TrialBand, trialBand } from '@loopwright/decide/acceptance'
import type { Scenario } from '@loopwright/scenario'
import { meanOf, sampleQuantile } from '@loopwright/stats'
import type { TrialsResult } from '@loopwright/study/trials'
import {
  type AnswerCell,
  type AnswerFigure,
  type ChartCell,
  proseCell,
  type ProseCell,
  type SureCell,
  type TableCell,
  tableCell,
} from '../cells/cell.ts'
import { openChartCell } from '../cells/chartCell.ts'
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
 * @throws RangeError  with too few trials, or where the line makes nothing
 * @example acceptanceOf({ share: 0.9, falseAlarm: 0.1, miss: 0.1, trialsMost: 3 }, trials).plan.passFrom // => 100
 */
export function acceptanceOf(
  section: Pick<AcceptanceSection, 'share' | 'falseAlarm' | 'miss' | 'trialsMost'>,
  trials: TrialsResult,
): AcceptanceResult {
  const ends = (paths: TrialsResult['healthy']): number[] => paths.map((path) => path.at(-1)!)
  if (trials.healthy.length > 0 && ends(trials.healthy).every((made) => made === 0))
    throw new RangeError(
      'the line makes nothing in a trial: there is nothing to accept. Are there products and carriers in the judged shift?',
    )
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
  /** at each look what a line that meets its forecast makes, and the count below which the trial may end */
  readonly looks: ChartCell
  readonly sure: SureCell
  readonly practice: ProseCell
}

const length = (seconds: number): string => (seconds % 3600 === 0 ? `${seconds / 3600}-hour` : `${formatNumber(seconds / 60, 0)}-minute`)
/** "112 to 126", or the one count there is */
export const bandText = ({ low, high }: TrialBand): string =>
  low === high ? formatNumber(low, 0) : `${formatNumber(low, 0)} to ${formatNumber(high, 0)}`
/** trials that the borders were not made from */
export const keptApart = ({ healthy }: TrialsResult): number => healthy.length - Math.ceil(healthy.length / 2)
/** fewer trials are told by their number */
const SHARES_FROM = 100
/** "8 of 20", "9 % of" */
export const ofTrials = (share: number, n: number): string =>
  n < SHARES_FROM ? `${formatNumber(share * n, 0)} of ${formatNumber(n, 0)}` : `${formatShare(share)} of`

/** What was simulated of each look, and what was counted there. */
export function lookRows({ trials: { looks, healthy }, sequential, band }: AcceptanceResult, counts: readonly number[] = []): TrialLook[] {
  return looks.map((seconds, at) => {
    const made = healthy.map((path) => path[at]!)
    const { low, high } = trialBand(made, band.share)
    return {
      seconds,
      limit: sequential.stopBelow[at]!,
      caught: sequential.stoppedBy[at]!,
      low,
      middle: sampleQuantile(made, 0.5),
      high,
      count: counts[at] ?? null,
    }
  })
}

const WORDS: readonly string[] = ['no', 'one', 'two', 'three', 'four', 'five']
/** "two trials", "three 4-hour trials" */
export const manyTrials = ({ trials }: TestPlan, long = ''): string => `${WORDS[trials] ?? formatNumber(trials, 0)} ${long}trials`
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
    looks: openChartCell(
      'acceptance-looks',
      trialLooks(lookRows(result), {
        caption: 'While it runs: when the trial may end early',
        note: 'The borders are made for all looks together: by them, and by them alone, looking often costs nothing.',
        counts: false,
      }),
    ),
    sure: {
      kind: 'sure',
      id: 'acceptance-sure',
      sentences: [
        `The band rests on ${formatNumber(band.n, 0)} simulated trials and holds at least ${formatShare(band.covers)} of further ones; more simulated trials make its ends surer, not narrower.`,
        `The borders were made from one half of these and tried on the other: all looks together end ${ofTrials(sequential.falseAlarm, keptApart(trials))} trials of a line that meets its forecast, and miss ${formatShare(sequential.miss)} of the slower one’s.${sequential.falseAlarm > 1.5 * section.falseAlarm ? ` That is more than the ${formatShare(section.falseAlarm)} asked for: so few trials fix no border; simulate more (\`--replications\`).` : ''}`,
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
  plan.trials === 1 ? `one ${trial} trial` : `${manyTrials(plan, `${trial} `)} together`

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
      : `No test of up to ${formatNumber(section.trialsMost, 0)} trials tells them apart as asked: the best, passed from ${formatNumber(plan.passFrom, 0)} units on in ${many}, still lets a line whose tasks take ${formatShare(section.longer)} longer pass in ${formatShare(plan.miss)} of cases. ${remedy(section, trials)}`,
  ]
}

/** What to do where no test tells the lines apart: work that limits nothing is told by no count. */
function remedy({ longer }: AcceptanceSection, { healthy, slower }: TrialsResult): string {
  const mean = (paths: TrialsResult['healthy']): number => meanOf(paths.map((path) => path.at(-1)!))
  const lost = 1 - mean(slower) / mean(healthy)
  if (!(lost < longer / 2)) return 'Make the trial longer.'
  const costs = lost <= 0 ? 'cost it no output' : `cost it ${formatShare(lost)} of its output`
  return `Tasks that take ${formatShare(longer)} longer ${costs}: what limits this line is not their work, so that no count tells of it. Time the stations in the trial, too.`
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
