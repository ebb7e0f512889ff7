/** What a choice among station orders tells, in sentences and a table. */
import { formatNumber, formatShare, formatWithHalfWidth, type Table } from '@loopwright/charts'
import type { LineSpec } from '@loopwright/line'
import type { OrderResult, Places } from '@loopwright/study'
import { pairSentence } from './compareWords.ts'

/** candidates that the table shows */
const ROWS_MAX = 15
/** letters of an order's name in the table */
const NAME_MAX = 38

/** "S5 at Z14, S4 at Z16": where it differs from today; "today's order" where it does not. */
export function placesWords(line: LineSpec, places: Places): string {
  const moved = line.stations.flatMap(({ name, zone }, index) =>
    places[index] === zone ? [] : [`${name} at ${line.zones[places[index]!]!.name}`],
  )
  return moved.length === 0 ? 'today’s order' : moved.join(', ')
}

/** As many whole places as a narrow column holds: "S3 at Z17, S4 at Z15, S5 at Z13, …". */
export function shortPlaces(words: string): string {
  if (words.length <= NAME_MAX) return words
  const end = words.lastIndexOf(', ', NAME_MAX - 3)
  return end < 0 ? words : `${words.slice(0, end)}, …`
}

export function orderSentences(result: OrderResult, line: LineSpec, per: string): string[] {
  const { candidates, winner, gain, mineGain, mine, today } = result
  if (winner === null) return ['Stopped before an order was chosen: nothing to tell.']
  const count = `${candidates.length} ${candidates.length === 1 ? 'order' : 'orders'}`
  const head =
    winner === today
      ? `Today’s order stays: of ${count} tried none was chosen before it.`
      : `Of ${count} tried this one is chosen: ${placesWords(line, candidates[winner]!.places)}.`
  const gained = gain === null ? [] : [capital(pairSentence('the chosen order', 'today’s', { difference: gain }, per))]
  const own =
    mine === null || mine === winner || mineGain === null
      ? []
      : [
          capital(
            pairSentence(`the order given (${placesWords(line, candidates[mine]!.places)})`, 'today’s', { difference: mineGain }, per),
          ),
        ]
  return [head, ...gained, ...own]
}

export function orderSure(result: OrderResult, line: LineSpec, per: string): string[] {
  const { choice, delta, alpha, candidates, firstStage, exhaustive, searched, table, winner } = result
  if (choice === null || winner === null) return []
  const name = placesWords(line, candidates[winner]!.places)
  const confidence = formatShare(1 - alpha)
  const small = formatNumber(delta, 1)
  const others = (table?.rows ?? []).filter(({ system, maybeBest }) => maybeBest && system !== winner)
  return [
    `If ${name} is better than every other by ${small} or more a ${per} it would be chosen in ${confidence} of such studies; other orders within ${small} may be as good.`,
    others.length === 0
      ? `After ${firstStage} replications of each no other order could be the best.`
      : `After ${firstStage} replications of each, ${others.length} ${others.length === 1 ? 'other' : 'others'} could not be told from the best; the choice went on among them to ${choice.stage} replications.`,
    exhaustive
      ? 'All orders that the rules allow were tried.'
      : `The rules allow too many orders to try all: short runs looked at ${searched}, step by step from today’s, and the best went into the choice. A better one may lie further off.`,
    'The gain over today is measured in fresh random worlds, so that having been chosen does not flatter it.',
  ]
}

export function orderTable(result: OrderResult, line: LineSpec, per: string): Table {
  const { candidates, table, winner, today, mine } = result
  const right = (head: string) => ({ head, align: 'right', pageOnly: false }) as const
  const rows = [...(table?.rows ?? [])].sort((a, b) => b.mean - a.mean)
  const kept = rows.filter(({ system }, place) => place < ROWS_MAX || [winner, today, mine].includes(system))
  const mark = (system: number): string => (system === today ? ' (today)' : system === mine ? ' (given)' : '')
  return {
    caption: `Station orders against the best of the others, units a ${per}`,
    columns: [
      { head: 'Order', align: 'left', pageOnly: false },
      right(`Units a\n${per}`),
      right('At most\nworse'),
      right('At most\nbetter'),
      right('Dropped\nafter'),
    ],
    rows: kept.map(({ system, mean, low, high }) => ({
      cells: [
        `${shortPlaces(placesWords(line, candidates[system]!.places))}${system === today ? '' : mark(system)}`,
        formatNumber(mean, 1),
        formatNumber(-low, 1),
        formatNumber(high, 1),
        candidates[system]!.droppedAt === null ? 'stayed' : formatNumber(candidates[system]!.droppedAt!, 0),
      ],
      marked: system === winner,
    })),
    note: `Of the first ${result.firstStage} replications, which all orders have; the limits hold together in ${formatShare(1 - result.alpha)} of such studies.${rows.length > kept.length ? ` ${rows.length - kept.length} more are left out.` : ''}`,
  }
}

/** Mean of today in the fresh worlds. */
export function todaySentence({ todayMean }: OrderResult, per: string): string | null {
  return todayMean === null ? null : `Today’s order makes ${formatWithHalfWidth(todayMean.mean, todayMean.halfWidth)} units a ${per}.`
}

const capital = (text: string): string => `${text[0]!.toUpperCase()}${text.slice(1)}`
