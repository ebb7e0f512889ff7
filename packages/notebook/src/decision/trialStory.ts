/** The story of a trial while it runs, as cells. */
import { formatDuration, formatNumber, formatShare, tableOf } from '@loopwright/charts/table'
import { standingOf, type TrialStanding } from '@loopwright/decide'
import { type AnswerCell, type AnswerFigure, proseCell, type SureCell, type TableCell, tableCell } from '../cells/cell.ts'
import type { Tale } from '../cells/tale.ts'
import { USE } from '../sweep/cautions.ts'
import { NOT_KNOWN } from '../sweep/countWords.ts'
import { type AcceptanceResult, bandText } from './acceptanceStory.ts'

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
  readonly looks: TableCell
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
  const rows = trials.looks.map((seconds, at) => ({ seconds, limit: sequential.stopBelow[at]!, count: counts[at] ?? null }))
  const looks = tableCell(
    'trial-looks',
    tableOf<(typeof rows)[number]>({
      caption: 'Counts beside the limits',
      columns: [
        {
          head: 'After',
          text: ({ seconds }) => formatDuration(seconds),
          data: [['after_s', 'seconds from the start of the trial', ({ seconds }) => seconds]],
        },
        {
          head: 'Counted',
          text: ({ count }) => (count === null ? NOT_KNOWN : formatNumber(count, 0)),
          data: [['counted', 'units so far; empty: not yet', ({ count }) => count]],
        },
        {
          head: 'Stop below',
          text: ({ limit }) => (limit === null ? 'go on' : formatNumber(limit, 0)),
          data: [['stop_below', 'units; empty: no count stops it', ({ limit }) => limit]],
        },
      ],
      rows,
      marked: ({ count, limit }) => count !== null && limit !== null && count < limit,
    }),
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
      `Stopping by these limits is wrong for ${formatShare(sequential.falseAlarm)} of lines that meet their forecast, all looks together; a line that is slower as agreed gets through in ${formatShare(sequential.miss)} of trials.`,
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
  passed: 'is passed',
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
    ...(limit === null ? [] : [{ label: 'Stop below', value: formatNumber(limit, 0), sure: 'units by then' }]),
  ]
}

function trialSentences({ state, count, looks, stoppedAt }: TrialStanding, { trials, band, sequential }: AcceptanceResult): string[] {
  const after = formatDuration(trials.looks[looks - 1]!)
  switch (state) {
    case 'stopped: below what the forecast allows':
      return [
        `The trial may end: at ${formatDuration(trials.looks[stoppedAt!]!)} fewer than ${formatNumber(sequential.stopBelow[stoppedAt!]!, 0)} units were counted, which a line that meets its forecast makes too seldom.`,
      ]
    case 'goes on':
      return [`The trial goes on: ${formatNumber(count, 0)} units after ${after} are not below the limit.`]
    case 'passed':
      return [`The trial is passed by its looks: ${formatNumber(count, 0)} units after ${after}, and the band is ${bandText(band)}.`]
    case 'above the band':
      return [
        `${formatNumber(count, 0)} units after ${after} are more than the band of ${bandText(band)}: before anybody is glad, look whether the trial counted right, and was run with the agreed mix.`,
      ]
  }
}
