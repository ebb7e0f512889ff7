/** The plan of the loop for each count, shaded by how full every zone is. */
import { type Figure as ChartFigure, formatNumber, loopPlan, type PlanZone } from '@loopwright/charts'
import type { Scenario } from '@loopwright/scenario'
import type { SweepCount } from '@loopwright/study'
import { type Figure, planFigure } from '../figure.ts'
import type { Period } from './period.ts'

/** @param occupancy  the chart of the same numbers: finding and table are its own */
export function occupancyPlan(scenario: Scenario, count: SweepCount, period: Period, occupancy: ChartFigure): Figure {
  const zones = planZones(scenario, count)
  const valueMeaning = `share of the ${period.one} with a carrier in the zone, %`
  return planFigure(loopPlan(zones, { id: 'plan-wide', widthPixels: 1100, valueMeaning }), loopPlan(zones, { id: 'plan-narrow', widthPixels: 328, valueMeaning }), {
    finding: occupancy.finding,
    howToRead: `Each cell is a zone, to scale; the darker, the longer a carrier is in it; the number is its share of the ${period.one} in per cent.`,
    table: occupancy.table,
  })
}

/** The loop as drawn; without a count nothing is shaded. */
export function planZones(scenario: Scenario, count: SweepCount | null): PlanZone[] {
  const { line, layout } = scenario
  return line.zones.map((zone, index) => {
    const station = line.stations.find((one) => one.zone === index)
    const occupancy = count?.zones[index]?.occupancyMean ?? null
    return {
      name: zone.name,
      lengthMetres: zone.lengthMetres ?? 1,
      turn: layout.turns[index] ?? null,
      transfer: zone.transfer !== null,
      station:
        station === undefined
          ? null
          : {
              title: station.title,
              duties: (['load', 'unload'] as const).filter((duty) => station[duty] !== null),
            },
      value: occupancy,
      label: occupancy === null ? null : formatNumber(occupancy * 100, 0),
    }
  })
}
