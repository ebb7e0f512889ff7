/** The story of a loss waterfall, as cells: from the ideal down to the line as it stands, cause by cause. */
import { losses } from '@loopwright/charts'
import { dataColumn, tableOf, wordColumn } from '@loopwright/charts/table'
import type { LossResult } from '@loopwright/study'
import type { Scenario } from '@loopwright/scenario'
import { type AnswerCell, type CautionCell, type Cell, type ChartCell, type DataCell, type SureCell, warningCell } from '../cells/cell.ts'
import { openChartCell } from '../cells/chartCell.ts'
import { type Standing, scenarioWarnings, standing, standingCells } from '../study/standing.ts'
import { type Period, period } from '../sweep/period.ts'
import type { Tale } from '../cells/tale.ts'
import { lengthWarning, startSentence } from '../words/startWords.ts'
import { endWarnings } from '../words/endWarnings.ts'
import { stoppedEarly } from '../words/stoppedEarly.ts'
import type { StudyStoryOptions } from '../words/storyOptions.ts'
import { lossFigures, lossSentences, lossSure } from './lossWords.ts'

/** The tale of what is lost, and its parts by name. */
export interface LossStory extends Standing, Tale {
  readonly answer: AnswerCell
  readonly sure: SureCell
  /** said only where it holds */
  readonly warnings: readonly CautionCell[]
  /** floating bars from the ideal down to the forecast, with their table; null below 2 replications */
  readonly chart: ChartCell | null
  /** the gap, and how far the causes alone are from it: for files of tables */
  readonly together: DataCell
}

/**
 * The story's parts, by name.
 *
 * @example lossStory(scenario, await findLosses(scenario.line, { replications: 2, bestCarriers: 4 }, { seed: '1', workers: 0 }), { scenarioFile: 'ring.yaml' }).question // => 'What is lost, and by what?'
 */
export function lossStory(scenario: Scenario, result: LossResult, options: StudyStoryOptions): LossStory {
  const { id = 'losses' } = options
  const words = period(scenario)
  const sure = lossSure(result, words)
  const parts = {
    answer: {
      kind: 'answer',
      id: `${id}-answer`,
      sentences: lossSentences(result, words),
      figures: lossFigures(result, words),
    } satisfies AnswerCell,
    warnings: [
      ...stoppedEarly(id, result, result.forecast?.n ?? 0, words),
      ...endWarnings(id, { line: scenario.line, runs: result.forecast?.n ?? result.gridlocks, ...result }, 'losses', words),
      ...safetyWarning(id, result),
      ...scenarioWarnings(scenario, options),
      ...lengthWarning(scenario, result.gridlocks > 0 && result.gridlocks === (result.forecast?.n ?? result.gridlocks)),
    ],
    chart: result.forecast === null ? null : { ...openChartCell(`${id}-causes`, losses(result, { per: words.one })), lead: true },
    sure: {
      kind: 'sure',
      id: `${id}-sure`,
      sentences: sure.length === 0 ? [] : [...sure, startSentence(scenario)],
    } satisfies SureCell,
    together: togetherData(`${id}-together`, result, words),
    ...standing(scenario, options),
  }
  const { answer, warnings, chart, together } = parts
  const shown: readonly (Cell | null)[] = [answer, ...warnings, chart, parts.sure, together]
  return { ...parts, question: 'What is lost, and by what?', cells: [...shown.filter((cell) => cell !== null), ...standingCells(parts)] }
}

/** What a protection costs is no reason to do without it. */
function safetyWarning(id: string, { causes }: LossResult): CautionCell[] {
  if (causes.every(({ kind }) => kind !== 'safety stops')) return []
  return [
    warningCell(
      `${id}-safety`,
      'Safety stops protect people',
      'What they cost says how often somebody is in the way of a move, and no more. Never bypass, mute or delay a protective device to gain units; local codes, the standards that apply and a qualified (where required, licensed) professional decide on any change.',
    ),
  ]
}

function togetherData(id: string, { gap, interaction }: LossResult, { one }: Pick<Period, 'one'>): DataCell {
  const rows = [
    { what: 'gap: the ideal less the line as it stands', difference: gap },
    { what: 'interaction: the gap less the sum of what each cause alone would bring', difference: interaction },
  ].filter(({ difference }) => difference !== null)
  type Row = { readonly what: string; readonly difference: LossResult['gap'] }
  return {
    kind: 'data',
    id,
    table: tableOf<Row>({
      caption: 'All causes together',
      columns: [
        wordColumn('What', 'what', 'what the units are', ({ what }) => what),
        dataColumn('units', `units per ${one}, mean`, ({ difference }) => difference?.mean ?? null),
        dataColumn('units_low', 'lower limit of the 95 % interval', ({ difference }) => difference?.low ?? null),
        dataColumn('units_high', 'upper limit of the 95 % interval', ({ difference }) => difference?.high ?? null),
      ],
      rows,
    }),
  }
}
