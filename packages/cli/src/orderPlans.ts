/** Plans of the loop for a choice of station orders: today's, and the chosen one beside it. */
import { loopPlan, type PlanZone } from '@loopwright/charts'
import { oneView, type PlanCell, planZones } from '@loopwright/notebook'
import type { Scenario } from '@loopwright/scenario'
import { type OrderResult, type Places, withPlaces } from '@loopwright/study'
import { placesWords } from './words/orderWords.ts'

/** Today's plan, then the chosen one where it is another, then the one given by hand. Drawn without shades: where stations stand is all they show. */
export function orderPlans(scenario: Scenario, { candidates, today, winner, mine }: OrderResult): PlanCell[] {
  if (winner === null) return []
  const plan = (id: string, what: string, places: Places): PlanCell => planCell(scenario, id, what, places)
  return [
    plan('plan-today', 'Today’s order', candidates[today]!.places),
    ...(winner === today ? [] : [plan('plan-chosen', 'The chosen order', candidates[winner]!.places)]),
    ...(mine === null || mine === winner || mine === today ? [] : [plan('plan-given', 'The order given', candidates[mine]!.places)]),
  ]
}

function planCell(scenario: Scenario, id: string, what: string, places: Places): PlanCell {
  const { line } = scenario
  const zones: readonly PlanZone[] = planZones({ ...scenario, line: withPlaces(line, places) }, null)
  const words = placesWords(line, places)
  const at = line.stations.map(({ name, title }, index) => ({ name, title, zone: line.zones[places[index]!]!.name }))
  const finding = `${what}${words === 'today’s order' ? '' : `: ${words}`}. ${at.map(({ name, zone }) => `${name} ${zone}`).join(', ')}.`
  return {
    kind: 'plan',
    id,
    views: oneView({
      finding,
      picture: { kind: 'plan', zones, paths: null, valueMeaning: null },
      alt: `${loopPlan(zones).description} ${finding}`,
      howToRead: 'Each cell is a zone, to scale; brackets outside are stations.',
      table: {
        caption: what,
        columns: (['Station', 'Name', 'Zone'] as const).map((head) => ({ head, align: 'left', pageOnly: false })),
        rows: at.map(({ name, title, zone }) => ({ cells: [name, title, zone], marked: false })),
        note: null,
      },
      tableOpen: false,
    }),
  }
}
