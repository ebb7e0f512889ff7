import { type LoopPlan, loopPlan } from '../plan.ts'
import { baseLinePlan } from './baseLine.ts'

const VALUE_MEANING = 'share of the shift with a carrier in the zone, %'

export function planExample(): LoopPlan {
  return loopPlan(baseLinePlan(10), { valueMeaning: VALUE_MEANING })
}

export function planNarrowExample(): LoopPlan {
  return loopPlan(baseLinePlan(10), { valueMeaning: VALUE_MEANING, widthPixels: 360 })
}

/** The same zones without their corners. */
export function planRingExample(): LoopPlan {
  return loopPlan(
    baseLinePlan(10).map((zone) => ({ ...zone, turn: null, transfer: false })),
    { valueMeaning: VALUE_MEANING },
  )
}
