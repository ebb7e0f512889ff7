import { notSettled } from './domain.ts'

/**
 * Root of a rising function by Newton's method, kept in a bracket: a step that would leave it halves it instead.
 *
 * @param where         name for the refusal
 * @param start         first guess
 * @param valueAndSlope writes the value into out[0] and the slope into out[1]
 * @throws StatisticsError E_NOT_SETTLED after 500 steps
 */
export function solveRising(where: string, start: number, valueAndSlope: (x: number, out: Float64Array) => void): number {
  const out = new Float64Array(2)
  let low = -Infinity
  let high = Infinity
  let x = start
  let stretch = 1
  let lastStep = Infinity
  for (let n = 0; n < 500; n++) {
    valueAndSlope(x, out)
    const value = out[0]!
    if (value === 0) return x
    if (value < 0) low = x
    else high = x
    const step = value / out[1]!
    let next = x - step
    if (Math.abs(step) <= 1e-15 * Math.max(0.5, Math.abs(x))) return next
    if (next > low && next < high) {
      // the steps no longer shrink: rounding of the function is all that is left
      if (Math.abs(step) < 1e-12 * Math.max(1, Math.abs(x)) && Math.abs(step) > lastStep / 2) return next
    } else if (low > -Infinity && high < Infinity) {
      next = low + (high - low) / 2
      if (next === low || next === high) return next
    } else {
      next = value < 0 ? x + stretch : x - stretch
      stretch *= 2
    }
    lastStep = Math.abs(step)
    x = next
  }
  throw notSettled(where, 500)
}
