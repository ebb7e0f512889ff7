/** The line at one instant of a run: who is in which zone. */
import { tableOf, wordColumn } from '@loopwright/charts/table'
import { listWords } from '@loopwright/line'
import type { Scenario } from '@loopwright/scenario'
import type { CarrierStay } from '@loopwright/study'
import { oneView, type PlanCell } from '../cells/cell.ts'
import { planZones, unshadedPlan } from '../sweep/plan.ts'
import { counted } from '../words/countedWords.ts'

/** carriers in stations that the finding names */
const NAMED = 3

/**
 * @param stays  of the carriers to be shown
 * @param at     seconds from the start of the run
 * @param when   the same in words: "08:00"
 */
export function carriersPlan(scenario: Scenario, stays: readonly CarrierStay[], at: number, when: string): PlanCell {
  const here = stays
    .filter(({ zone, enterSeconds, leaveSeconds }) => zone >= 0 && enterSeconds <= at && (leaveSeconds === null || at < leaveSeconds))
    .toSorted((a, b) => a.zone - b.zone)
  const zones = planZones(scenario, null).map((zone, index) => {
    const stay = here.find((one) => one.zone === index)
    return stay === undefined ? zone : { ...zone, carrier: String(stay.carrier) }
  })
  const plan = unshadedPlan(scenario.line, zones)
  const inStations = here.flatMap(({ zone, carrier }) => {
    const { station } = zones[zone]!
    return station === null ? [] : [`${carrier} at ${station.title}`]
  })
  const who = inStations.length === 0 ? '' : `: ${listWords(inStations, NAMED)}`
  return {
    kind: 'plan',
    id: 'trace-plan',
    pageOnly: true,
    views: oneView({
      finding: `At ${when} ${inStations.length} of ${counted(here.length, 'carrier')} on the line ${inStations.length === 1 ? 'is' : 'are'} in a station${who}.`,
      ...plan,
      howToRead: `The line at one instant of this run, the left edge of the picture before. A carrier that moves is drawn in the zone that it moves to. ${plan.howToRead}`,
      table: tableOf<CarrierStay>({
        caption: `Carriers at ${when}`,
        columns: [
          {
            head: 'Carrier',
            text: ({ carrier }) => String(carrier),
            data: [['carrier', 'number of the carrier', ({ carrier }) => carrier]],
          },
          wordColumn('Zone', 'zone', 'name of the zone', ({ zone }) => zones[zone]!.name),
          wordColumn('Station', 'station', 'title of the station there; empty: none', ({ zone }) => zones[zone]!.station?.title ?? ''),
        ],
        rows: here,
      }),
      tableOpen: false,
    }),
  }
}
