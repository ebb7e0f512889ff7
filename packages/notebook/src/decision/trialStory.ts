/** The story of a trial while it runs, as cells. */
import { trialLooks } from '@loopwright/charts/decision'
import { formatDuration, formatNumber, formatShare } from '@loopwright/charts/table'
import { standingOf, type TrialStanding } from '@loopwright/decide/acceptance'
import { type AnswerCell, type AnswerFigure, type ChartCell, proseCell, type SureCell } from '../cells/cell.ts'
import { openChartCell } from '../cells/chartCell.ts'
import type { Tale } from '../cells/tale.ts'
import { USE } from '../sweep/cautions.ts'
import { type AcceptanceResult, bandText, keptApart, lookRows, manyTrials, ofTrials } from './acceptanceStory.ts'

/** How a trial stands, and what it is judged by. */
export interface TrialResult {
  readonly kind: 'trial'
  readonly counts: readonly number[]
  readonly standing: TrialStanding
  readonly acceptance: AcceptanceResult
}

/** The tale of a trial while it runs, and its parts by name. */
export interface TrialStory extends Tale {
  readonly answer: AnswerCell
  /** counts so far beside band and borders */
  readonly looks: ChartCell
  readonly sure: SureCell
}

/**
 * How a trial stands after its looks so far.
 *
 * @throws RangeError  if counts fall, or are more than the looks
 * @example trialOf([40], acceptanceOf({ share: 0.9, falseAlarm: 0.1, miss: 0.1, trialsMost: 3 }, trials)).standing.state // => 'stopped: below what the forecast allows'
 */
export function trialOf(counts: readonly number[], acceptance: AcceptanceResult): TrialResult {
  return { kind: 'trial', counts, standing: standingOf(counts, acceptance.sequential, acceptance.band.high), acceptance }
}

/**
 * The tale of a trial while it runs.
 *
 * @param name  of the alternative
 * @example trialStory('loop', trialOf([40], acceptanceOf({ share: 0.9, falseAlarm: 0.1, miss: 0.1, trialsMost: 3 }, trials))).question // => 'How does the trial of “loop” stand?'
 */
export function trialStory(name: string, { counts, standing, acceptance }: TrialResult): TrialStory {
  const { sequential, band, trials } = acceptance
  const looks = openChartCell(
    'trial-looks',
    trialLooks(lookRows(acceptance, counts), { caption: 'Counts beside the borders', note: '', counts: true }),
  )
  const answer: AnswerCell = {
    kind: 'answer',
    id: 'trial-answer',
    sentences: trialSentences(standing, acceptance),
    figures: trialFigures(standing, acceptance, counts),
  }
  const sure: SureCell = {
    kind: 'sure',
    id: 'trial-sure',
    sentences: [
      `Ending a trial by these borders was wrong for ${ofTrials(sequential.falseAlarm, keptApart(trials))} simulated trials of a line that meets its forecast, all looks together; a line that is slower as agreed gets through in ${formatShare(sequential.miss)} of trials.`,
      `The band of the whole trial is ${bandText(band)}.`,
    ],
  }
  return {
    answer,
    looks,
    sure,
    question: `How does the trial of “${name}” stand?`,
    cells: [answer, looks, sure, { ...proseCell('section-cautions', '## Cautions'), pageOnly: true }, USE],
  }
}

const TRIAL_STATES: Readonly<Record<TrialStanding['state'], string>> = {
  'stopped: below what the forecast allows': 'may end',
  'goes on': 'goes on',
  passed: 'was not ended',
  'above the band': 'look again',
}

function trialFigures(
  { state, looks, stoppedAt }: TrialStanding,
  { trials, sequential }: AcceptanceResult,
  counts: readonly number[],
): AnswerFigure[] {
  const at = stoppedAt ?? looks - 1
  const limit = sequential.stopBelow[at] ?? null
  return [
    { label: 'The trial', value: TRIAL_STATES[state], sure: '' },
    { label: 'Counted', value: formatNumber(counts[at]!, 0), sure: `units after ${formatDuration(trials.looks[at]!)}` },
    ...(limit === null ? [] : [{ label: 'May end below', value: formatNumber(limit, 0), sure: 'units by then' }]),
  ]
}

function trialSentences({ state, count, looks, stoppedAt }: TrialStanding, { trials, band, plan, sequential }: AcceptanceResult): string[] {
  const after = formatDuration(trials.looks[looks - 1]!)
  const test = `The test asks for ${formatNumber(plan.passFrom, 0)} units ${plan.trials === 1 ? 'in one trial' : `in ${manyTrials(plan)} together`}.`
  switch (state) {
    case 'stopped: below what the forecast allows':
      return [
        `The trial may end: at ${formatDuration(trials.looks[stoppedAt!]!)} fewer than ${formatNumber(sequential.stopBelow[stoppedAt!]!, 0)} units were counted, as few as a line that meets its forecast seldom makes.`,
      ]
    case 'goes on':
      return [
        `The trial goes on: ${formatNumber(count, 0)} units after ${after} ${sequential.stopBelow[looks - 1] === null ? 'end nothing, since no count does so early' : 'are not below the border'}.`,
        test,
      ]
    case 'passed':
      return [
        `No look ended the trial: ${formatNumber(count, 0)} units after ${after}; a line that meets its forecast makes ${bandText(band)}.`,
        plan.trials === 1
          ? `The test is ${count >= plan.passFrom ? 'passed' : 'not passed'}: it asks for ${formatNumber(plan.passFrom, 0)}.`
          : test,
      ]
    case 'above the band':
      return [
        `${formatNumber(count, 0)} units after ${after} are more than the band of ${bandText(band)}: before anybody is glad, look whether the trial counted right, and was run with the agreed mix.`,
      ]
  }
}
