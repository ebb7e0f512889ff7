/**
 * What must hold of every told text. Each rule finds what is wrong, as short sentences, and carries a bad sample that it must find
 * and a good one that it must let pass.
 */
import type { Telling } from './telling.ts'
import {
  columns,
  firstSentenceAnswersPlan,
  headsAreWords,
  noIdentifier,
  noLongSeconds,
  noOneOfMany,
  noProgramWords,
  noVerdict,
  noZeroOfTime,
  numberOfVerb,
  openLineIsNoLoop,
} from './rules/words.ts'
import { listEndIsSaid, oneInterval, pairingHasRuns } from './rules/runs.ts'
import { oneRounding, pairsAreRoundings, planAgrees } from './rules/numbers.ts'
import { pageHeadInText, textOnPage } from './rules/page.ts'
import { stateLeads } from './rules/states.ts'

export type Judged = Pick<Telling, 'code' | 'text' | 'json' | 'page' | 'runs' | 'command' | 'line'>

export interface Rule {
  readonly name: string
  readonly says: string
  readonly find: (told: Judged) => string[]
}

export const RULES: readonly Rule[] = [
  { name: 'columns', says: 'no line is longer than 80 columns', find: columns },
  { name: 'program words', says: 'no word of a program stands where a value is missing', find: noProgramWords },
  { name: 'open line', says: 'an open line is never called a loop', find: openLineIsNoLoop },
  { name: 'titles', says: 'people read titles, not keys', find: noIdentifier },
  { name: 'one of many', says: 'one thing is told in the singular', find: noOneOfMany },
  { name: 'number of the verb', says: 'a verb has the number of its subject', find: numberOfVerb },
  { name: 'nothing', says: 'no time and no number of none is told as an amount', find: noZeroOfTime },
  { name: 'heads', says: 'a column that is left out is named by a word', find: headsAreWords },
  { name: 'long seconds', says: 'long times are not told in seconds with decimals', find: noLongSeconds },
  { name: 'list end', says: 'a list of products that ran out is told', find: listEndIsSaid },
  { name: 'one interval', says: 'the same runs have one interval', find: oneInterval },
  { name: 'pairing', says: 'what pairing is worth is told from enough runs', find: pairingHasRuns },
  { name: 'verdict', says: 'no verdict on hazards', find: noVerdict },
  {
    name: 'plan first',
    says: 'where there is a plan, the first sentence answers it, or the answer does behind a standstill that is shouted',
    find: firstSentenceAnswersPlan,
  },
  { name: 'one rounding', says: 'one number has one rounding', find: oneRounding },
  { name: 'pairs', says: 'every "mean ± half" is the rounding of an interval of the document', find: pairsAreRoundings },
  { name: 'plan agrees', says: 'how often the plan is met agrees with the document', find: planAgrees },
  { name: 'state leads', says: 'a state that is named as what holds a station up leads there', find: stateLeads },
  { name: 'on the page', says: 'what the terminal says stands on the page', find: textOnPage },
  { name: 'in the terminal', says: 'answer, how sure and warnings of the page stand in the terminal', find: pageHeadInText },
]
