/** Time within the window (warm-up, end] only. */
import type { Recursion } from './recursion.ts'

/** Whether something at this instant counts. */
export function counts(recursion: Recursion, at: number): boolean {
  return at > recursion.warmup && at <= recursion.last
}

/** Seconds of [from, to) that lie in the window. */
export function within(recursion: Recursion, from: number, to: number): number {
  const a = Math.max(from, recursion.warmup)
  const b = Math.min(to, recursion.last)
  return b > a ? b - a : 0
}
