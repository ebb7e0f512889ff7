/** What a carrier study says beyond a sweep's answer: flat zone, spare carriers, knees, the plan, and how sure. */
import { formatNumber, formatShare } from '@loopwright/charts'
import type { CarrierStep, CarrierStudy, PlanCount } from '@loopwright/study'
import type { Period } from './period.ts'

export type StudyTold = Pick<
  CarrierStudy,
  'answer' | 'flat' | 'steps' | 'planCount' | 'settled' | 'looks' | 'law' | 'partial' | 'pilot' | 'counts'
>

/** Sentences that follow the answer. */
export function studySentences(study: StudyTold, period: Period): string[] {
  return [flatSentence(study), stepSentence(study, period), kneeSentence(study), planCountSentence(study.planCount, period)].filter(
    (sentence) => sentence !== null,
  )
}

function flatSentence({ flat, answer }: StudyTold): string | null {
  if (flat === null || answer === null || flat.from === flat.to) return null
  return `From ${flat.from} to ${flat.to} carriers output stays within ${formatShare(answer.within)} of the best.`
}

/** What one carrier more than the answer brings, and one fewer costs. */
function stepSentence({ answer, steps }: StudyTold, period: Period): string | null {
  const chosen = answer?.chosen ?? null
  if (chosen === null) return null
  const more = steps.find((step) => step.from === chosen)
  const fewer = steps.find((step) => step.to === chosen)
  const parts = [
    ...(more === undefined ? [] : [`One carrier more ${stepWords(more, 'brings', period)}`]),
    ...(fewer === undefined ? [] : [`${more === undefined ? 'One carrier' : 'one'} fewer ${stepWords(fewer, 'costs', period)}`]),
  ]
  return parts.length === 0 ? null : `${parts.join('; ')}.`
}

/** "brings 1.9 units a shift (1.4 to 2.5)" */
function stepWords({ difference }: CarrierStep, verb: 'brings' | 'costs', period: Period): string {
  const { mean, low, high, halfWidth, status } = difference
  if (status === 'identical in every replication') return verb === 'brings' ? 'changes nothing' : 'costs nothing'
  const digits = Math.max(Math.abs(low), Math.abs(high)) < 10 ? 1 : 0
  const number = (value: number): string => formatNumber(value, digits)
  if (status === 'no difference shown')
    return `makes no difference that these runs show (${number(low)} to ${number(high)} units ${period.each})`
  const turned = mean < 0
  const word = turned ? (verb === 'brings' ? 'costs' : 'brings') : verb
  const [least, most] = turned ? [-high, -low] : [low, high]
  const span = halfWidth === 0 ? ', always the same' : ` (${number(least)} to ${number(most)})`
  return `${word} ${number(Math.abs(mean))} units ${period.each}${span}`
}

/** Where the law of the loop changes what limits it. */
function kneeSentence({ law }: StudyTold): string | null {
  if (law === null || law.carriersLow === null) return null
  const { carriersLow, carriersHigh } = law
  const low = `By the law of the loop carriers are short below ${formatNumber(carriersLow, 0)}`
  return carriersHigh === null ? `${low}.` : `${low}, and empty zones beyond ${formatNumber(carriersHigh, 0)}.`
}

/** Which count meets the plan in nine of ten shifts, with the interval of its chance, and whether that is shown. */
export function planCountSentence(plan: PlanCount | null, period: Period): string | null {
  if (plan === null || period.plan === null) return null
  const { carriers, estimate, verdict } = plan
  const wanted = `the plan of ${formatNumber(period.plan, 0)} in nine of ten ${period.many}`
  const { successes, n, low, high } = estimate
  const counted = `${formatNumber(successes, 0)} of ${formatNumber(n, 0)} simulated; the chance is between ${formatShare(low)} and ${formatShare(high)}`
  if (verdict === 'shown') return `The smallest count that meets ${wanted} is ${carriers}: shown (${counted}).`
  if (verdict === 'likely') return `The smallest count that meets ${wanted} is likely ${carriers}, but that is not shown (${counted}).`
  const nearest = `${carriers} comes nearest (${counted})`
  return verdict === 'not shown' ? `No count is shown to meet ${wanted}; ${nearest}.` : `No count tried meets ${wanted}; ${nearest}.`
}

/** How the answer was come by, and what a wrong one would be worth. */
export function studySureSentences({ answer, settled, looks, partial, pilot, counts }: StudyTold): string[] {
  const last = looks.at(-1)
  if (answer === null || last === undefined) return []
  const runs = formatNumber(
    counts.reduce((sum, count) => sum + count.replications, 0),
    0,
  )
  const wrong = `A study like this names too few carriers in at most ${formatNumber(100 * (1 - answer.level), 0)} of 100 cases.`
  const how = `${last.replications} replications of each count in question (${runs} in all, after ${pilot.replications} of each to find where to begin)`
  if (partial) return [`Stopped before the question was settled. ${wrong}`]
  if (settled) return [`Settled with ${how}. ${wrong}`]
  if (last.undecided === null) return [`No count could be confirmed with ${how}.`]
  return [
    `Not settled with ${how}: ${last.undecided} is neither confirmed nor shown to fall short, so it lies very near the border. ${wrong}`,
  ]
}
