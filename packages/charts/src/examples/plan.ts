import { lineMap } from '../times/lineMap.ts'
import { type LoopPlan, loopPlan } from '../plan/plan.ts'
import type { PlanZone } from '../plan/planZone.ts'
import { baseLinePlan } from './baseLine.ts'

const VALUE_MEANING = 'share of the shift with a carrier in the zone, %'

/** a carrier starts in every other zone */
const started = (zone: PlanZone, index: number): PlanZone => ({ ...zone, starts: index % 2 === 1 && !zone.transfer })

export function planExample(): LoopPlan {
  return loopPlan(baseLinePlan(10).map(started), { valueMeaning: VALUE_MEANING })
}

export function planNarrowExample(): LoopPlan {
  return loopPlan(baseLinePlan(10).map(started), { valueMeaning: VALUE_MEANING, widthPixels: 360 })
}

/** The same zones without their corners. */
export function planRingExample(): LoopPlan {
  return loopPlan(
    baseLinePlan(10).map((zone, index) => started({ ...zone, turn: null, transfer: false }, index)),
    { valueMeaning: VALUE_MEANING },
  )
}

/** A loop with two test places beside each other, a repair spur by hand, and a store that carriers come from. */
export function mapExample(widthPixels = 1100): LoopPlan {
  const names = ['Load', '', 'Fit', '', 'Test A', 'Test B', 'Check', 'Repair', '', 'Unload', '']
  const zones = names.map((title, index) => ({
    name: `Z${String(index + 1).padStart(2, '0')}`,
    lengthMetres: 1.5,
    turn: null,
    transfer: index === 3,
    station:
      title === '' ? null : { title, duties: title === 'Load' ? (['load'] as const) : title === 'Unload' ? (['unload'] as const) : [] },
    value: (index * 0.37) % 1,
    label: String(Math.round(((index * 0.37) % 1) * 100)),
    starts: index === 1 || index === 7,
  }))
  const ways = [
    [-1, 0],
    [0, 1],
    [1, 2],
    [2, 3],
    [3, 4],
    [3, 5],
    [4, 6],
    [5, 6],
    [6, 7],
    [6, 8],
    [7, 2],
    [8, 9],
    [9, 10],
    [10, 0],
    [10, -1],
  ]
  const paths = ways.map(([from, to]) => ({ from: from!, to: to!, manual: from === 7 }))
  return lineMap(zones, paths, { valueMeaning: VALUE_MEANING, widthPixels })
}
