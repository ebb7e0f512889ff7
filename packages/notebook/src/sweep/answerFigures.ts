/** The answer of a carrier sweep, a forecast or some runs in a few large figures, with the roundings of its sentences. */
import { formatShare, percent, type RoundedParts } from '@loopwright/charts/table'
import type { ChanceVerdict } from '@loopwright/stats'
import type { SweepCount, SweepResult } from '@loopwright/study'
import type { AnswerFigure } from '../cells/cell.ts'
import { chanceWords, planText } from '../words/planWords.ts'
import { isFixed } from './answerWords.ts'
import { countWords, NOT_KNOWN } from './countWords.ts'
import type { Period } from './period.ts'

/** The count that the answer names first: the one that meets the plan, else the one that is enough; null: neither is settled. */
export function namedCount({ answer, planAnswer }: Pick<SweepResult, 'answer' | 'planAnswer'>): number | null {
  return planAnswer?.about ?? planAnswer?.carriers ?? answer?.chosen ?? null
}

/** How many carriers, and what the line makes with them. */
export function sweepFigures(result: Pick<SweepResult, 'answer' | 'planAnswer' | 'counts'>, period: Period): AnswerFigure[] {
  const { answer, counts } = result
  const named = namedCount(result)
  const count = counts.find(({ carriers }) => carriers === (named ?? answer?.best))
  if (count === undefined || answer === null || count.gridlocks > 0 || count.mean === null || count.mean.mean === 0) return []
  const nearly = answer.chosen === null || answer.chosen === named ? '' : `${answer.chosen} make nearly the most`
  const sure = answer.chosen === named ? 'enough for nearly the most' : nearly
  const label = named === null ? 'Carriers that make the most' : 'Carriers'
  const carriers = counts.length === 1 ? [] : [{ label, value: String(count.carriers), sure: named === null ? 'not settled yet' : sure }]
  return [...carriers, ...countFigures(count, period)]
}

/** Units of a window, what nine of ten reach, and the plan. */
export function countFigures(count: SweepCount, period: Period): AnswerFigure[] {
  if (count.gridlocks > 0 || count.units.length === 0) return []
  const { mean, halfWidth, p10 } = countWords(count)
  if (mean === NOT_KNOWN) return []
  const fixed = isFixed(count)
  return [
    {
      label: `Units ${period.each}`,
      value: mean,
      sure: fixed ? `the same in every ${period.one}` : halfWidth === NOT_KNOWN ? '' : `± ${halfWidth} on average`,
    },
    ...(fixed || p10 === null ? [] : [{ label: `Nine of ten ${period.many}`, value: p10, sure: 'units or more' }]),
    ...(period.plan === null || count.planVerdict === null ? [] : [planFigure(period.plan, count.planVerdict, period.many)]),
  ]
}

/**
 * A number and its half-width as a large figure: the half-width stands with what is said of it.
 *
 * @example figureOf('As it stands', { value: '330', half: '1' }, 'units a shift') // => { label: 'As it stands', value: '330', sure: '± 1 units a shift' }
 */
export function figureOf(label: string, { value, half }: RoundedParts, what: string): AnswerFigure {
  return { label, value, sure: half === null ? what : `± ${half} ${what}` }
}

/** The same of what is more: with a plus sign. */
export function moreFigure(label: string, parts: RoundedParts, what: string): AnswerFigure {
  return figureOf(label, { ...parts, value: `+${parts.value}` }, what)
}

/** by verdict: whether nine of ten meet the plan */
const MET = { met: 'yes', 'not met': 'no', about: 'about', open: 'open' } as const

export function planFigure(plan: number, verdict: ChanceVerdict, many: string): AnswerFigure {
  const { share, low, high, method } = verdict
  const label = `Plan of ${planText(plan)} met`
  if (method === 'no chance') return { label, value: share === 1 ? 'yes' : 'no', sure: `all ${many} are the same` }
  const sure =
    share === 0 || share === 1 ? chanceWords(verdict) : `in ${formatShare(share)} of ${many}, ${percent(low)} to ${percent(high)}`
  return { label, value: MET[verdict.verdict], sure }
}
