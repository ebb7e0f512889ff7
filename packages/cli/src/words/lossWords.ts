/** What a loss waterfall tells, in sentences and a table. */
import { decimalsFor, formatNumber, formatShare, formatWithHalfWidth, type Table } from '@loopwright/charts'
import type { LossResult } from '@loopwright/study'

type Loss = LossResult['causes'][number]

export function lossSentences({ causes, forecast, ideal, gap }: LossResult, per: string): string[] {
  if (forecast === null || ideal === null || gap === null) return ['Stopped before two replications of each were done: nothing to tell.']
  const largest = [...causes].sort((a, b) => b.alone.mean - a.alone.mean)[0]!
  const head = `This line makes ${formatWithHalfWidth(forecast.mean, forecast.halfWidth)} units a ${per}; without any of the ${causes.length} causes below it would make ${formatWithHalfWidth(ideal.mean, ideal.halfWidth)}, ${formatWithHalfWidth(gap.mean, gap.halfWidth)} more.`
  if (largest.alone.mean <= 0) return [head]
  return [
    head,
    `The largest single loss is ${largest.name}: alone it takes ${formatWithHalfWidth(largest.alone.mean, largest.alone.halfWidth, 1)} units a ${per}.`,
  ]
}

export function lossSure({ interaction, forecast, carriers, bestCarriers }: LossResult, per: string): string[] {
  if (interaction === null || forecast === null) return []
  const size = formatWithHalfWidth(Math.abs(interaction.mean), interaction.halfWidth, 1)
  const together =
    interaction.status === 'no difference shown' || interaction.mean === 0
      ? 'Taken out one by one, the causes bring about as much as together.'
      : `Together the causes cost ${size} units a ${per} ${interaction.mean > 0 ? 'more' : 'less'} than the sum of what each costs alone: where one is taken out, ${interaction.mean > 0 ? 'others stand behind it' : 'another no longer counts twice'}.`
  const count =
    bestCarriers === carriers
      ? `${carriers} carriers are not shown to be too few or too many`
      : `with ${bestCarriers} carriers none are short or in the way`
  return [
    together,
    `The same ${forecast.n} shifts were run again with each cause taken out, with every other chance event as it was; intervals are at ${formatShare(forecast.level)} each. More replications narrow them.`,
    `The column of steps takes one cause out after another, from top to bottom, and sums to the gap; another order would share out the interaction in another way. Of the carriers: ${count}, by a pilot.`,
  ]
}

export function lossTable({ causes, forecast, ideal, gap, interaction }: LossResult, per: string): Table {
  const right = (head: string) => ({ head, align: 'right', pageOnly: false }) as const
  const lost = ({ mean, halfWidth, status }: Loss['step']): string =>
    status === 'identical in every replication'
      ? '0'
      : `${formatNumber(mean, Math.max(0, Math.min(1, decimalsFor(halfWidth, 1))))} ± ${formatNumber(halfWidth, 1)}`
  const line = (name: string, step: string, alone: string, left: string) => ({ cells: [name, step, alone, left], marked: false })
  let left = forecast?.mean ?? 0
  return {
    caption: `Units lost a ${per}, by cause`,
    columns: [{ head: 'Taken out', align: 'left', pageOnly: false }, right('Step'), right('Alone'), right(`Units a\n${per}`)],
    rows: [
      line('nothing: the forecast', '', '', formatNumber(left, 1)),
      ...causes.map(({ name, step, alone }) => {
        left += step.mean
        return line(name, lost(step), lost(alone), formatNumber(left, 1))
      }),
      line('interaction', '', interaction === null ? '–' : lost(interaction), ''),
      line(
        'all of them: the ideal',
        gap === null ? '–' : lost(gap),
        gap === null ? '–' : lost(gap),
        ideal === null ? '–' : formatNumber(ideal.mean, 1),
      ),
    ],
    note: 'Step: after all above it are out. Alone: out of the line as it stands; these and the interaction sum to the gap.',
  }
}
