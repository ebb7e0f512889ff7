/** What a choice among station orders says, in sentences. */
import { capital, formatNumber, formatShare, formatWithHalfWidth, roundedParts } from '@loopwright/charts/table'
import { type LineSpec, listWords } from '@loopwright/line'
import type { OrderResult } from '@loopwright/study'
import type { Places } from '@loopwright/study/change'
import { differenceClause, differenceFigure, differenceWords, levelWords } from '../compare/compareWords.ts'
import type { AnswerFigure } from '../cells/cell.ts'
import type { Period } from '../sweep/period.ts'
import { intervalCaution } from '../words/intervalWords.ts'

type Words = Pick<Period, 'one' | 'each' | 'many'>
type Stations = Pick<LineSpec, 'stations' | 'zones'>

export const TODAY = 'today’s order'
/** where the user gave one */
export const GIVEN = 'the order given'

/** "S5 at Z14, S4 at Z16": where it differs from today. */
export function placesWords(line: Stations, places: Places): string {
  const moved = movedWords(line, places)
  return moved.length === 0 ? TODAY : moved.join(', ')
}

/** Whether a new order helps, which, what it makes beside today's, and what the order given by hand makes. */
export function orderSentences(line: Stations, result: OrderResult, words: Words): string[] {
  const { winner, today, todayMean, mine, mineGain } = result
  if (winner === null) return ['No answer yet: the study was stopped before an order was chosen.']
  const given =
    mine === null || mine === winner || mine === today || mineGain === null
      ? []
      : [`${capital(differenceClause(`${GIVEN} (${placesWords(line, result.candidates[mine]!.places)})`, TODAY, mineGain, words))}.`]
  const made =
    todayMean === null
      ? []
      : [
          `${capital(TODAY)} makes ${formatWithHalfWidth(todayMean.mean, todayMean.halfWidth)} units ${words.each}.${intervalCaution(todayMean)}`,
        ]
  return [...(winner === today ? [keepSentence(result)] : chosenSentences(line, result, winner, words)), ...given, ...made]
}

/** That none makes more is known where the limits of all others say so; else it is not shown. */
function keepSentence({ candidates, mine, table, today }: OrderResult): string {
  const others = candidates.length - 1
  const known = table?.rows.every(({ system, high }) => system === today || high <= 0)
  const [helps, makes] = known ? [NO, 'makes more'] : [NOT_SHOWN, 'is shown to make more']
  if (others === 1)
    return `${helps}: keep today’s, for ${mine === null ? 'the one alternative' : GIVEN} ${known ? 'does not make' : 'is not shown to make'} more.`
  return `${helps}: keep today’s, for none of the ${others} alternatives${mine === null ? '' : `, ${GIVEN} among them,`} ${makes}.`
}

const NO = 'No new order helps'
const NOT_SHOWN = 'No new order is shown to help'

function chosenSentences(line: Stations, { candidates, gain, mine }: OrderResult, winner: number, words: Words): string[] {
  const others = candidates.length - 1
  const moved = listWords(movedWords(line, candidates[winner]!.places))
  const given = winner === mine ? `, ${GIVEN}` : ''
  const chosen = `${capital(moved)}${given === '' ? '' : `${given},`} was chosen${others === 1 ? '' : ` of ${others} alternatives`}`
  if (gain === null)
    return [
      `Not known yet whether a new order helps: the study was stopped before the one chosen was measured beside ${TODAY}.`,
      `${chosen}.`,
    ]
  if (gain.status === 'no difference shown') {
    const { low, high } = differenceWords(gain)
    return [
      `${NOT_SHOWN}: keep today’s.`,
      `${chosen}, but measured again no difference from ${TODAY} is shown (${levelWords(gain.level)}: ${low} to ${high} units ${words.each}).`,
    ]
  }
  if (gain.mean > 0) {
    const best = others === 1 ? '' : `, the most of ${others} alternatives`
    return [`A new order helps: put ${moved}${given}.`, `${capital(differenceClause('that', TODAY, gain, words))}${best}.`]
  }
  const again = gain.mean === 0 ? `it makes exactly what ${TODAY} makes` : differenceClause('that', 'today’s', gain, words)
  return [`${NOT_SHOWN}: keep today’s.`, `${chosen}, but measured again ${again}.`]
}

/** The order to take, what it gains, what today's makes, and what the order given gains. */
export function orderFigures(line: Stations, result: OrderResult, { each }: Words): AnswerFigure[] {
  const { winner, today, todayMean, gain, mine, mineGain, candidates } = result
  if (winner === null) return []
  const takes =
    winner !== today && gain !== null && gain.mean > 0 && ['difference shown', 'always differs by the same'].includes(gain.status)
  return [
    {
      label: 'Order to take',
      value: takes ? placesWords(line, candidates[winner]!.places) : 'today’s',
      sure: candidates.length === 2 ? 'of 2 orders' : `of ${candidates.length} orders tried`,
    },
    ...(gain === null ? [] : [differenceFigure('The best alternative', gain, `units ${each}`)]),
    ...(todayMean === null
      ? []
      : [
          {
            label: 'Today’s order',
            value: roundedParts(todayMean.mean, todayMean.halfWidth).value,
            sure: `units ${each}`,
          },
        ]),
    ...(mine === null || mine === winner || mine === today || mineGain === null
      ? []
      : [differenceFigure(capital(GIVEN), mineGain, `units ${each}`)]),
  ]
}

/** What the choice promises, and what it does not. */
export function orderSure(result: OrderResult, { each, many }: Words): string[] {
  const { winner, today, choice, delta, alpha, candidates, firstStage, table, exhaustive, searched, gain, mineGain } = result
  if (winner === null || choice === null) return []
  const small = `${formatNumber(delta, 1)} units ${each}`
  const others = (table?.rows ?? []).filter(({ system }) => system !== winner)
  const near = others.filter(({ maybeBest, high }) => maybeBest && high > 0).length
  const same = others.filter(({ low, high }) => low === 0 && high === 0).length
  return [
    `If one of the ${candidates.length} orders is better than every other by ${small} or more, ${formatShare(1 - alpha)} of such studies choose it; orders closer than that may be as good as ${winner === today ? 'today’s' : 'the one chosen'}.`,
    near === 0
      ? `After ${firstStage} simulated ${many} of each order no other could be better${same === 0 ? '' : `; ${otherOrders(same)} ${same === 1 ? 'makes' : 'make'} just as much`}.`
      : `After ${firstStage} simulated ${many} of each order, ${otherOrders(near)} could still be the best${choice.stage > firstStage ? `; the choice went on among them up to ${formatNumber(choice.stage, 0)} ${many} each` : ''}.`,
    exhaustive
      ? 'All orders that the rules allow were tried.'
      : `The rules allow too many orders to try them all: short runs looked at ${formatNumber(searched, 0)}, step by step from today’s, and the best of these were simulated at length. A better one may lie further off.`,
    ...(gain === null && mineGain === null
      ? []
      : [
          `The difference from ${TODAY} was measured in other simulated ${many} than those of the choice, so that having been chosen does not flatter it.`,
        ]),
  ]
}

const otherOrders = (count: number): string => (count === 1 ? '1 other order' : `${count} other orders`)

function movedWords({ stations, zones }: Stations, places: Places): string[] {
  return stations.flatMap(({ name, zone }, index) => (places[index] === zone ? [] : [`${name} at ${zones[places[index]!]!.name}`]))
}
