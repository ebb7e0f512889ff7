import type { Axis } from '../drawing/drawing.ts'
import { niceStep } from '../draw/window.ts'

/**
 * The upright axis of units of weeks: round ends around all that is drawn, with room for words above it; cut where it does not begin at 0.
 *
 * @param units  all that is drawn, each ≥ 0; at least one
 * @example weekAxis([3250, 3400], 'Units a week').from // => 3200
 */
export function weekAxis(units: readonly number[], title: string): Axis {
  const [least, most] = [Math.min(...units), Math.max(...units)]
  const step = niceStep(Math.max(1, most - least), 4)
  const from = Math.max(0, Math.floor((least - 0.1 * step) / step) * step)
  return { from, to: Math.ceil((most + 0.25 * step) / step) * step, title, grid: true, cut: from > 0 }
}
