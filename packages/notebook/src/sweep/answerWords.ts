/** The answer of a carrier sweep in sentences, its uncertainty in the same breath. */
import { formatNumber, formatShare } from '@loopwright/charts'
import type { SweepAnswer, SweepCount, SweepResult } from '@loopwright/study'
import { countWords as units } from './countWords.ts'
import type { Period } from './period.ts'

/** What of a sweep the words look at. */
export type Told = Pick<SweepResult, 'answer' | 'counts'>

/**
 * The sentences of the answer: what the chosen count makes, by which rule it was chosen, which count meets the plan.
 *
 * @param nineOfTen  false: the last is left out, where somebody else says it
 */
export function answerSentences(result: Told, period: Period, nineOfTen = true): string[] {
  const { answer, counts } = result
  if (answer === null) {
    return [`No answer yet: every count needs at least 2 replications, and some have fewer.`]
  }
  const best = countOf(counts, answer.best)
  const chosen = answer.chosen === null ? null : countOf(counts, answer.chosen)
  const first = [outputSentence(chosen ?? best, period), planSentence(chosen ?? best, period)]
    .filter((sentence) => sentence !== null)
    .join(' ')
  const plan = nineOfTen ? nineOfTenSentence(result, period) : null
  return [first, ruleSentence(answer, counts, period), plan].filter((sentence) => sentence !== null)
}

/** "With 10 carriers the loop makes 330 units a shift on average; nine of ten shifts make at least 316." */
export function outputSentence(count: SweepCount, period: Period): string {
  const mean = `${carriersText(count.carriers)} the loop makes ${units(count).mean} units ${period.each} on average`
  const low = units(count).p10
  return low === null
    ? `${mean}.`
    : `${mean}; nine of ten ${period.one === 'shift' ? 'shifts' : `such ${period.many}`} make at least ${low}.`
}

/** How often the plan is met, in shifts simulated and as a chance with its interval; null without a plan. */
export function planSentence(count: SweepCount, period: Period): string | null {
  const estimate = count.meetsPlan
  if (period.plan === null || estimate === null) return null
  const { successes, n, low, high } = estimate
  const plan = `The plan of ${formatNumber(period.plan, 0)} is met in`
  const simulated = `${formatNumber(n, 0)} ${period.many} simulated`
  if (n < 20) return `${plan} ${successes} of ${simulated}: too few to promise anything.`
  if (successes === n) return `${plan} all ${simulated}; the chance is at least ${formatShare(low)}.`
  if (successes === 0) return `${plan} none of ${simulated}; the chance is at most ${formatShare(high)}.`
  const chance = `the chance is between ${formatShare(low)} and ${formatShare(high)}`
  return n === 100
    ? `${plan} ${successes} of ${simulated}; ${chance}.`
    : `${plan} ${ofHundred(successes / n)} of 100 ${period.many} (${successes} of ${simulated}; ${chance}).`
}

/** By which rule the count was chosen, and why not one fewer. */
function ruleSentence(answer: SweepAnswer, counts: readonly SweepCount[], period: Period): string {
  const within = formatShare(answer.within)
  const level = formatShare(answer.level)
  const { best, chosen, notConfirmed } = answer
  if (chosen === null) return noCountSentence(answer, counts)
  if (counts.length === 1) return `${chosen} is the only count tried.`
  const rule =
    chosen === best
      ? `${chosen} is the best count tried, and the smallest within ${within} of it with ${level} confidence.`
      : `${chosen} is the smallest count whose mean is within ${within} of the best count tried (${best}), with ${level} confidence.`
  if (notConfirmed === null) return `${rule} It is also the smallest count tried: fewer may do as well.`
  const fewer = notConfirmed.carriers
  if (notConfirmed.reason === 'gridlock')
    return `${rule} ${fewer} is not recommended: the loop stood still (gridlock) in some replications.`
  const by = `by up to ${shortfall(notConfirmed.shortBy)} units ${period.each}`
  return notConfirmed.shown
    ? `${rule} ${fewer} falls short of that border, ${by}.`
    : `${rule} ${fewer} is not confirmed: it may fall short of that border ${by}.`
}

function noCountSentence({ within, notConfirmed }: SweepAnswer, counts: readonly SweepCount[]): string {
  if (counts.every((count) => count.units.every((made) => made === 0))) return 'No count tried makes anything.'
  if (notConfirmed?.reason === 'gridlock') {
    return `No count is recommended: with ${notConfirmed.carriers} carriers, where the search began, the loop stood still (gridlock) in some replications.`
  }
  return `No count is confirmed yet as within ${formatShare(within)} of every other: run more replications.`
}

/** The smallest count that meets the plan in nine of ten shifts, or that none does; null without a plan. */
function nineOfTenSentence(result: Told, period: Period): string | null {
  const { answer, counts } = result
  if (period.plan === null || answer === null || counts.length === 1) return null
  const plan = `the plan of ${formatNumber(period.plan, 0)} in nine of ten ${period.many}`
  if (answer.meetsPlanInNineOfTen !== null) {
    const also = answer.meetsPlanInNineOfTen === answer.chosen ? ` too` : ''
    return `The smallest count that meets ${plan} is ${answer.meetsPlanInNineOfTen}${also}.`
  }
  const nearest = counts.reduce<SweepCount | null>(
    (most, count) => (share(count) > (most === null ? -1 : share(most)) ? count : most),
    null,
  )
  if (nearest === null || share(nearest) <= 0) return `No count tried meets ${plan}.`
  return `No count tried meets ${plan}; ${nearest.carriers} comes nearest, with ${ofHundred(share(nearest))} of 100.`
}

/** What more replications would narrow, and what they would not. */
export function sureSentences(result: Told, period: Period): string[] {
  const { answer, counts } = result
  if (answer === null) return []
  const count = countOf(counts, answer.chosen ?? answer.best)
  const { mean, halfWidth, low, high } = units(count)
  const sentences: string[] = []
  if (halfWidth === '0')
    sentences.push(`Average output per ${period.one}: ${mean} in every replication: nothing random reaches this number.`)
  else {
    const few = count.replications < 10 ? ' Few replications: the interval rests on the normal shape.' : ''
    sentences.push(
      `Average output per ${period.one}: ${mean}, known to ± ${halfWidth} (${formatShare(count.mean?.level ?? 0.95)}). More replications narrow this.${few}`,
    )
    if (low !== null && high !== null) {
      sentences.push(
        `A single ${period.one}: ${low} to ${high} in 95 of 100. More replications do not narrow this; it is how much ${period.many} differ.`,
      )
    }
  }
  return sentences
}

export function countOf(counts: readonly SweepCount[], carriers: number): SweepCount {
  const found = counts.find((count) => count.carriers === carriers)
  if (found === undefined) throw new RangeError(`no count of ${carriers} carriers in this sweep`)
  return found
}

function carriersText(carriers: number): string {
  return `With ${carriers} ${carriers === 1 ? 'carrier' : 'carriers'}`
}

function share(count: SweepCount): number {
  return count.meetsPlan === null ? 0 : count.meetsPlan.share
}

/** Shifts of 100, never 0 nor 100 for what is not all or nothing. */
function ofHundred(part: number): string {
  return formatShare(part).replace(/[\s\u00a0\u202f\u2009]*%$/u, '')
}

function shortfall(shortBy: number): string {
  return formatNumber(shortBy, shortBy < 10 ? 1 : 0)
}
