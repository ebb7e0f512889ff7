import { formatNumber } from '../table/format.ts'
import type { Mark } from './drawing.ts'

/**
 * The plan as a dashed line across, its words above its left end.
 *
 * @param plan  on the upright axis; null: no plan
 * @example planRule(330).length // => 2
 */
export function planRule(plan: number | null): Mark[] {
  if (plan === null) return []
  const text = `plan ${formatNumber(plan, 0)}`
  return [
    { mark: 'rule', x: ['from', 'to'], y: [plan, plan], ink: 'plan' },
    { mark: 'words', x: 'from', y: plan, dx: 4, dy: -4, edge: 'bottom', text, ink: 'planWords', rim: 'paper' },
  ]
}
