/** Plans of the line for a choice of station orders: today's, the one chosen beside it, and the one given by hand. */
import { capital, tableOf, wordColumn } from '@loopwright/charts/table'
import type { OrderResult } from '@loopwright/study'
import { type Places, withPlaces } from '@loopwright/study/change'
import type { Scenario } from '@loopwright/scenario'
import { oneView, type PlanCell } from '../cells/cell.ts'
import type { Figure } from '../cells/figure.ts'
import { planZones, unshadedPlan } from '../sweep/plan.ts'
import { GIVEN, placesWords, TODAY } from './orderWords.ts'

/**
 * Today's order, then the others, each once; where today's is the one to keep, the best of the others stands beside it. Nothing where a stop came
 * before the choice. Drawn without shades: where stations stand is all they show.
 */
export function orderPlans(scenario: Scenario, { candidates, today, winner, mine, table }: OrderResult, id: string): PlanCell[] {
  if (winner === null) return []
  const given = mine === today ? null : mine
  const next = table?.rows.filter(({ system }) => system !== today).toSorted((a, b) => b.mean - a.mean)[0]?.system ?? null
  const beside = winner === today ? (given ?? next) : winner
  const plan = (name: string, what: string, index: number, changed = index): PlanCell => ({
    kind: 'plan',
    id: `${id}-plan-${name}`,
    pageOnly: true,
    views: oneView(planFigure(scenario, what, candidates[index]!.places, candidates[changed]!.places)),
  })
  return [
    plan('today', TODAY, today, beside ?? today),
    ...(winner === today ? [] : [plan('chosen', winner === given ? `${GIVEN}, which is the one chosen` : 'the order chosen', winner)]),
    ...(winner === today && given === null && next !== null ? [plan('next', 'the best of the others', next)] : []),
    ...(given === null || given === winner ? [] : [plan('given', GIVEN, given)]),
  ]
}

/** @param changed  where the stations stand in the order beside it: what moves there, or has moved here, is marked */
function planFigure(scenario: Scenario, what: string, places: Places, changed: Places): Figure {
  const line = withPlaces(scenario.line, places)
  const after = withPlaces(scenario.line, changed)
  const nameOf = (zone: number): string => line.zones[zone]!.name
  const zones = planZones({ ...scenario, line }, null).map((zone, index) => {
    const at = line.stations.findIndex((station) => station.zone === index)
    const [before, then] = [scenario.line.stations[at]?.zone, after.stations[at]?.zone]
    if (zone.station === null || before === undefined || then === undefined || before === then) return zone
    return { ...zone, station: { ...zone.station, moved: before === index ? `moves to ${nameOf(then)}` : `moved from ${nameOf(before)}` } }
  })
  const plan = unshadedPlan(line, zones)
  const words = placesWords(scenario.line, places)
  const title = `${capital(what)}${words === TODAY ? '' : `: ${words}`}`
  type Station = (typeof line.stations)[number]
  return {
    finding: `${title}.`,
    ...plan,
    alt: `${plan.alt} ${title}.`,
    table: tableOf<Station>({
      caption: title,
      columns: [
        wordColumn('Station', 'station', 'name of the station', ({ name }) => name),
        wordColumn('Title', 'title', 'title of the station', ({ title: called }) => called),
        wordColumn('Zone', 'zone', 'where it stands', ({ zone }) => line.zones[zone]!.name),
      ],
      rows: line.stations,
    }),
    tableOpen: false,
  }
}
