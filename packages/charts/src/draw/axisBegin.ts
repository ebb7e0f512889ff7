import { niceStep } from './window.ts'

/** steps up to the highest mark, at most */
const PIECES = 6

/**
 * Where an upright axis of units begins: at a round number below all marks, also where they all lie at one height, or at 0 where they reach down to less than half.
 *
 * @param least  lowest of all that is marked, at most `top`
 * @param top    highest of all that is marked, > 0
 * @param room   kept free below the lowest, as a share of the height of all that is marked
 * @example axisBegin(213, 358, 0.15) // => 150
 * @example axisBegin(24, 24, 0.15) // => 22
 */
export function axisBegin(least: number, top: number, room: number): number {
  if (least < top / 2) return 0
  const step = axisStep(least, top)
  const below = Math.floor((least - room * (top - least)) / step) * step
  return Math.max(0, below < top ? below : top - step)
}

/**
 * The step of such an axis.
 *
 * @example axisStep(213, 358) // => 50
 */
export function axisStep(least: number, top: number): number {
  return niceStep(top - Math.min(least, top / 2), PIECES)
}
