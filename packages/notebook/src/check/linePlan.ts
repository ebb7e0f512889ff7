/** The line as it was understood, drawn: what is where, and which way it goes. */
import type { PlanZone } from '@loopwright/charts'
import { tableOf, wordColumn } from '@loopwright/charts/table'
import { isPlainLoop, startZones } from '@loopwright/line'
import type { Scenario } from '@loopwright/scenario'
import { oneView, type PlanCell } from '../cells/cell.ts'
import { period } from '../sweep/period.ts'
import { planZones, unshadedPlan } from '../sweep/plan.ts'
import { counted } from '../words/countedWords.ts'

export function linePlan(scenario: Scenario): PlanCell {
  const { line } = scenario
  const zones = planZones(scenario, null, startZones(line))
  const plan = unshadedPlan(line, zones)
  const places = isPlainLoop(line) ? '' : ` and ${counted(line.paths.length, 'path')}`
  return {
    kind: 'plan',
    id: 'check-plan',
    pageOnly: true,
    views: oneView({
      finding: `The ${period(scenario).line} as it is simulated: ${counted(zones.length, 'zone')}${places}, ${counted(line.stations.length, 'station')}.`,
      ...plan,
      table: tableOf<PlanZone>({
        caption: 'Zones in the order of the file',
        columns: [
          wordColumn('Zone', 'zone', 'name of the zone', ({ name }) => name),
          wordColumn('Station', 'station', 'title of the station there; empty: none', ({ station }) => station?.title ?? ''),
          wordColumn('Transfer', 'transfer', 'yes or no', ({ transfer }) => (transfer ? 'yes' : 'no')),
        ],
        rows: zones,
      }),
      tableOpen: false,
    }),
  }
}
