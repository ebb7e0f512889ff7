/** Plans of the line for a choice of station orders: today's, the one chosen beside it, and the one given by hand. */
import { capital, tableOf, wordColumn } from '@loopwright/charts/table'
import { isPlainLoop } from '@loopwright/line'
import type { OrderResult } from '@loopwright/study'
import { type Places, withPlaces } from '@loopwright/study/change'
import type { Scenario } from '@loopwright/scenario'
import { oneView, type PlanCell } from '../cells/cell.ts'
import type { Figure } from '../cells/figure.ts'
import { drawPlan } from '../page/planHtml.ts'
import { mapPath, planZones } from '../sweep/plan.ts'
import { GIVEN, placesWords, TODAY } from './orderWords.ts'

/** Each order once; nothing where a stop came before the choice. Drawn without shades: where stations stand is all they show. */
export function orderPlans(scenario: Scenario, { candidates, today, winner, mine }: OrderResult, id: string): PlanCell[] {
  if (winner === null) return []
  const plan = (name: string, what: string, index: number): PlanCell => ({
    kind: 'plan',
    id: `${id}-plan-${name}`,
    pageOnly: true,
    views: oneView(planFigure(scenario, what, candidates[index]!.places)),
  })
  return [
    plan('today', TODAY, today),
    ...(winner === today ? [] : [plan('chosen', winner === mine ? `${GIVEN}, which is the one chosen` : 'the order chosen', winner)]),
    ...(mine === null || mine === winner || mine === today ? [] : [plan('given', GIVEN, mine)]),
  ]
}

function planFigure(scenario: Scenario, what: string, places: Places): Figure {
  const line = withPlaces(scenario.line, places)
  const zones = planZones({ ...scenario, line }, null).map((zone, index) => {
    const at = line.stations.findIndex((station) => station.zone === index)
    const before = scenario.line.stations[at]?.zone
    if (zone.station === null || before === undefined || before === index) return zone
    return { ...zone, station: { ...zone.station, movedFrom: scenario.line.zones[before]!.name } }
  })
  const paths = isPlainLoop(line) ? null : line.paths.map(mapPath)
  const words = placesWords(scenario.line, places)
  const title = `${capital(what)}${words === TODAY ? '' : `: ${words}`}`
  type Station = (typeof line.stations)[number]
  return {
    finding: `${title}.`,
    picture: { kind: 'plan', zones, paths, valueMeaning: null },
    alt: `${drawPlan({ zones, paths }, { valueMeaning: null }).description} ${title}.`,
    howToRead: `Each cell is a zone${paths === null ? ', to scale' : ''}; brackets are stations; a cross is a transfer.`,
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
