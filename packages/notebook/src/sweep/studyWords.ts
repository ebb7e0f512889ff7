/** What a carrier study says beyond a sweep's answer: flat zone, spare carriers, knees, the plan, and how sure. */
import { formatNumber, formatShare } from '@loopwright/charts/table'
import type { CarrierStep, CarrierStudy } from '@loopwright/study'
import { counted } from '../words/countedWords.ts'
import { unitsOf } from '../words/unitWords.ts'
import type { Period } from './period.ts'

export type StudyTold = Pick<CarrierStudy, 'answer' | 'chance' | 'flat' | 'steps' | 'settled' | 'looks' | 'law' | 'partial' | 'counts'>

/** Sentences that follow the answer. */
export function studySentences(study: StudyTold, period: Period): string[] {
  return [flatSentence(study), stepSentence(study, period), kneeSentence(study)].filter((sentence) => sentence !== null)
}

function flatSentence({ flat, answer }: StudyTold): string | null {
  if (flat === null || answer === null || flat.from === flat.to) return null
  return `From ${flat.from} to ${flat.to} carriers output stays within ${formatShare(answer.within)} of the best.`
}

/** What one carrier more than the count that is enough brings, and one fewer costs; the answer may begin with another count. */
function stepSentence({ answer, steps }: StudyTold, period: Period): string | null {
  const chosen = answer?.chosen ?? null
  if (chosen === null) return null
  const more = steps.find((step) => step.from === chosen)
  const fewer = steps.find((step) => step.to === chosen)
  const parts = [
    ...(more === undefined ? [] : [`One carrier more than ${chosen} ${stepWords(more, 'brings', period)}`]),
    ...(fewer === undefined
      ? []
      : [`${more === undefined ? `One carrier fewer than ${chosen}` : 'one fewer'} ${stepWords(fewer, 'costs', period)}`]),
  ]
  return parts.length === 0 ? null : `${parts.join('; ')}.`
}

/** "brings 1.9 units a shift (1.4 to 2.5)" */
function stepWords({ difference }: CarrierStep, verb: 'brings' | 'costs', period: Period): string {
  const { mean, low, high, halfWidth, status } = difference
  if (status === 'identical in every replication') return verb === 'brings' ? 'changes nothing' : 'costs nothing'
  const digits = halfWidth === 0 && Number.isInteger(mean) ? 0 : Math.max(Math.abs(low), Math.abs(high)) < 10 ? 1 : 0
  const number = (value: number): string => formatNumber(value, digits)
  if (status === 'no difference shown')
    return `makes no difference that these runs show (${number(low)} to ${number(high)} units ${period.each})`
  const turned = mean < 0
  const word = turned ? (verb === 'brings' ? 'costs' : 'brings') : verb
  const [least, most] = turned ? [-high, -low] : [low, high]
  const span = halfWidth === 0 ? ', always the same' : ` (${number(least)} to ${number(most)})`
  return `${word} ${unitsOf(number(Math.abs(mean)))} ${period.each}${span}`
}

/** Between which counts neither carriers nor free zones are short, on averages alone. */
function kneeSentence({ law }: StudyTold): string | null {
  if (law === null || law.carriersLow === null) return null
  const { carriersLow, carriersHigh } = law
  const low = `By mean times alone carriers are short below ${formatNumber(carriersLow, 0)}`
  return carriersHigh === null ? `${low}.` : `${low}, and free zones to move into beyond ${formatNumber(carriersHigh, 0)}.`
}

/** How the answer was come by, and what a wrong one would be worth. */
export function studySureSentences(
  { answer, chance, settled, looks, partial, counts }: StudyTold,
  { many }: Pick<Period, 'many'>,
): string[] {
  const last = looks.at(-1)
  if (answer === null || last === undefined || !chance) return []
  const each = counts.map(({ replications }) => replications)
  const [least, most] = [Math.min(...each), Math.max(...each)]
  const wrong = `A study like this names too few carriers in at most ${formatNumber(100 * (1 - answer.level), 0)} of 100 cases.`
  if (partial) return [`Stopped before the question was settled. ${wrong}`]
  const runs =
    least === most
      ? `${formatNumber(most, 0)} ${many} of each count`
      : `${formatNumber(least, 0)} to ${formatNumber(most, 0)} ${many} of each count, most of those in question`
  if (settled) return [`Settled with ${runs}. ${wrong}`]
  if (last.undecided === null) return [`Not settled with ${runs}. ${wrong}`]
  return [
    `Not settled with ${runs}: whether ${counted(last.undecided, 'carrier')} ${last.undecided === 1 ? 'is' : 'are'} enough is still open. ${wrong}`,
  ]
}
