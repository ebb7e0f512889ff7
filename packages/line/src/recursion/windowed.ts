/** Time within the window (warm-up, end] only. */
import type { Sweep } from './sweep.ts'

/** Whether something at this instant counts. */
export function counts(sweep: Sweep, at: number): boolean {
  return at > sweep.warmup && at <= sweep.last
}

/** Seconds of [from, to) that lie in the window. */
export function within(sweep: Sweep, from: number, to: number): number {
  const a = Math.max(from, sweep.warmup)
  const b = Math.min(to, sweep.last)
  return b > a ? b - a : 0
}
