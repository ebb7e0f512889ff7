/** The story of a choice among station orders, as cells: the chosen order, its gain over today, both drawn on the loop. */
import { formatNumber, formatShare, loopPlan, type Table } from '@loopwright/charts'
import type { Scenario } from '@loopwright/scenario'
import { type OrderResult, type Places, withPlaces } from '@loopwright/study'
import { type AnswerCell, oneView, type PlanCell, type TableCell } from '../cell.ts'
import { differenceSentence } from '../compare/compareWords.ts'
import type { Figure } from '../figure.ts'
import { type Period, period } from '../sweep/period.ts'
import { planZones } from '../sweep/plan.ts'

export interface OrderStory {
  readonly answer: AnswerCell
  /** every order against the best of the others; null where a stop came first */
  readonly table: TableCell | null
  /** today's order on the loop, and the chosen one where it is another */
  readonly plans: readonly PlanCell[]
}

/** candidates that the table shows, beside the chosen and today's */
const ROWS_MAX = 15

/** @param id  begins the ids of the cells */
export function orderStory(scenario: Scenario, result: OrderResult, id = 'order'): OrderStory {
  const words = period(scenario)
  const { winner, today, candidates } = result
  const plan = (name: string, title: string, places: Places): PlanCell => ({
    kind: 'plan',
    id: `${id}-plan-${name}`,
    views: oneView(planFigure({ ...scenario, line: withPlaces(scenario.line, places) }, title)),
  })
  return {
    answer: {
      kind: 'answer',
      id: `${id}-answer`,
      sentences: orderSentences(scenario, result, words),
      sure: sureSentences(result, words),
    },
    table:
      result.table === null
        ? null
        : { kind: 'table', id: `${id}-table`, where: 'both', views: oneView(orderTable(scenario, result, words)) },
    plans: [
      ...(candidates.length === 0 ? [] : [plan('today', 'Today’s order', candidates[today]!.places)]),
      ...(winner === null || winner === today
        ? []
        : [plan('chosen', `The chosen order: ${placesWords(scenario, candidates[winner]!.places)}`, candidates[winner]!.places)]),
    ],
  }
}

/** "S5 at Z14, S4 at Z16": where it differs from today. */
export function placesWords({ line }: Scenario, places: Places): string {
  const moved = line.stations.flatMap(({ name, zone }, index) =>
    places[index] === zone ? [] : [`${name} at ${line.zones[places[index]!]!.name}`],
  )
  return moved.length === 0 ? 'today’s order' : moved.join(', ')
}

/** Which order is chosen, and what it makes beside today's in fresh worlds. */
export function orderSentences(scenario: Scenario, result: OrderResult, words: Period): string[] {
  const { candidates, winner, today, gain, mine, mineGain } = result
  if (winner === null) return ['No answer yet: the study was stopped before an order was chosen.']
  const tried = `${candidates.length} orders tried`
  const chosen = candidates[winner]!.places
  const head =
    winner === today
      ? `Today’s order stays: none of ${tried} is chosen before it.`
      : `Of ${tried}, ${placesWords(scenario, chosen)} is chosen.`
  const own = mine === null || mine === winner ? null : candidates[mine]!.places
  return [
    head,
    ...(gain === null ? [] : [differenceSentence('the chosen order', 'today’s order', gain, words)]),
    ...(own === null || mineGain === null ? [] : [differenceSentence(placesWords(scenario, own), 'today’s order', mineGain, words)]),
  ]
}

function sureSentences(result: OrderResult, { one, each }: Period): string[] {
  const { winner, choice, delta, alpha, firstStage, table, exhaustive, searched, gain, mineGain } = result
  if (winner === null || choice === null) return []
  const small = formatNumber(delta, 1)
  const near = (table?.rows ?? []).filter(({ maybeBest, system }) => maybeBest && system !== winner).length
  return [
    `Where one order is better than every other by ${small} units ${each} or more, such a study chooses it in at least ${formatShare(1 - alpha)} of cases; orders that differ by less may be as good.`,
    near === 0
      ? `After ${firstStage} replications of each no other order could be the best.`
      : `After ${firstStage} replications of each ${near} others could still be the best; the choice went on to ${choice.stage}.`,
    exhaustive
      ? 'All orders that the rules allow were tried.'
      : `Short runs looked at ${searched} orders, step by step from today’s; a better one may lie further off.`,
    ...(gain === null && mineGain === null
      ? []
      : [`What a ${one} gains over today is measured in fresh random worlds, so that having been chosen does not flatter it.`]),
  ]
}

function orderTable(scenario: Scenario, result: OrderResult, { one }: Period): Table {
  const { candidates, table, winner, today, mine } = result
  const right = (head: string) => ({ head, align: 'right', pageOnly: false }) as const
  const rows = [...(table?.rows ?? [])].sort((a, b) => b.mean - a.mean)
  const kept = rows.filter(({ system }, place) => place < ROWS_MAX || [winner, today, mine].includes(system))
  const left = rows.length - kept.length
  return {
    caption: `Station orders against the best of the others, units per ${one}`,
    columns: [
      { head: 'Order', align: 'left', pageOnly: false },
      right(`Units per\n${one}`),
      right('At most\nworse'),
      right('At most\nbetter'),
    ],
    rows: kept.map(({ system, mean, low, high }) => ({
      cells: [
        `${placesWords(scenario, candidates[system]!.places)}${system === mine ? ' (by hand)' : ''}`,
        formatNumber(mean, 1),
        formatNumber(-low, 1),
        formatNumber(high, 1),
      ],
      marked: system === winner,
    })),
    note: `Of the first ${result.firstStage} replications, which all orders have; the limits hold together in ${formatShare(1 - result.alpha)} of such studies.${left > 0 ? ` ${left} more orders are left out.` : ''}`,
  }
}

function planFigure(scenario: Scenario, title: string): Figure {
  const zones = planZones(scenario, null)
  const { stations, zones: parts } = scenario.line
  return {
    finding: `${title}.`,
    picture: { kind: 'plan', zones, paths: null, valueMeaning: null },
    alt: loopPlan(zones).description,
    howToRead: 'Each cell is a zone, to scale; stations stand in the zones with a bracket; a cross is a transfer.',
    table: {
      caption: title,
      columns: [
        { head: 'Station', align: 'left', pageOnly: false },
        { head: 'Zone', align: 'left', pageOnly: false },
      ],
      rows: stations.map(({ name, title: called, zone }) => ({
        cells: [name === called ? name : `${name} ${called}`, parts[zone]!.name],
        marked: false,
      })),
      note: null,
    },
    tableOpen: false,
  }
}
