/** The story of a loss waterfall, as cells: from the ideal to the forecast, cause by cause. */
import { formatNumber, formatWithHalfWidth, losses, type Table } from '@loopwright/charts'
import type { Scenario } from '@loopwright/scenario'
import type { LossResult } from '@loopwright/study'
import { type AnswerCell, type ChartCell, oneView, type TableCell } from '../cell.ts'
import { chartCell } from '../chartCell.ts'
import { differenceWords } from '../compare/compareWords.ts'
import { period } from '../sweep/period.ts'

export interface LossStory {
  readonly answer: AnswerCell
  /** floating bars from the ideal down to the forecast; null below 2 replications */
  readonly chart: ChartCell | null
  readonly table: TableCell
}

/** @param id  begins the ids of the cells */
export function lossStory(scenario: Scenario, result: LossResult, id = 'losses'): LossStory {
  const { one, each } = period(scenario)
  return {
    answer: { kind: 'answer', id: `${id}-answer`, sentences: lossSentences(result, each), sure: sureSentences(result) },
    chart: result.forecast === null ? null : chartCell(`${id}-chart`, losses(result, { per: one })),
    table: { kind: 'table', id: `${id}-table`, where: 'both', views: oneView(lossTable(result, one)) },
  }
}

/** The gap, and the causes that cost most of it. */
export function lossSentences({ forecast, ideal, gap, causes }: LossResult, each: string): string[] {
  if (forecast === null || ideal === null || gap === null) return ['No answer yet: losses need at least 2 replications.']
  const whole = (value: number): string => formatNumber(value, 0)
  const first = `Without any of the causes the line would make ${whole(ideal.mean)} units ${each}; as it stands it makes ${whole(forecast.mean)} in the same worlds. ${differenceWords(gap).size} units are lost.`
  const worst = [...causes].filter(({ step }) => step.mean > 0).sort((a, b) => b.step.mean - a.step.mean)
  const most = worst.slice(0, 3).map(({ name, step }) => `${name} (${differenceWords(step).size})`)
  return most.length === 0 ? [first] : [first, `Most are lost by ${list(most)}.`]
}

function sureSentences({ interaction, causes, replications }: LossResult): string[] {
  if (interaction === null || causes.length === 0) return []
  const { size } = differenceWords(interaction)
  const apart =
    interaction.status === 'no difference shown' || interaction.mean === 0
      ? 'Taken out one at a time, no difference in their sum is shown.'
      : `Taken out one at a time, the causes bring ${size} units ${interaction.mean > 0 ? 'less' : 'more'} than together: where one goes, another takes over a part of it.`
  return [
    `The same ${replications} random worlds were run with one cause after another taken out, in the order of the table; the steps sum to the gap. ${apart}`,
  ]
}

function lossTable({ forecast, ideal, gap, causes }: LossResult, one: string): Table {
  const right = (head: string) => ({ head, align: 'right', pageOnly: false }) as const
  const total = (name: string, value: LossResult['forecast']): Table['rows'][number] => ({
    cells: [name, value === null ? '–' : formatWithHalfWidth(value.mean, value.halfWidth), ''],
    marked: true,
  })
  return {
    caption: `Units per ${one}: from the ideal to the forecast`,
    columns: [{ head: 'Cause', align: 'left', pageOnly: false }, right(`Units per\n${one}`), right('Taken out\nalone')],
    rows: [
      total('Ideal: none of the causes', ideal),
      ...[...causes].reverse().map(({ name, step, alone }) => ({
        cells: [name, lost(step), differenceWords(alone).withHalfWidth],
        marked: false,
      })),
      total('Forecast: the line as it stands', forecast),
    ],
    note:
      gap === null
        ? null
        : 'Lost by each cause after those below it are gone, with 95 % intervals; beside it what the line gains if that cause alone is gone.',
  }
}

/** A gain by taking out is a loss by being there. */
function lost(step: LossResult['causes'][number]['step']): string {
  const text = differenceWords({ ...step, mean: -step.mean, low: -step.high, high: -step.low }).withHalfWidth
  return step.mean < 0 ? `+${text}` : text
}

function list(items: readonly string[]): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)!}`
}
