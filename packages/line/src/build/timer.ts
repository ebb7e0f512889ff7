import type { Line } from '../instant/state.ts'

/** Starts the timer of `slot`, whose time the caller has written into `line.queue.times[slot]`. */
export function startTimer(line: Line, slot: number): void {
  line.queue.schedule(slot)
}

/** Holds a timer: it keeps the time that it had left. What ends at this very instant still ends. (MODEL.md §1, §7) */
export function holdTimer(line: Line, slot: number): void {
  const { queue } = line
  if (!queue.isPending(slot)) return
  const left = queue.times[slot]! - line.now
  if (left === 0) return
  queue.cancel(slot)
  line.left[slot] = left
  line.isHeldBack[slot] = 1
}

/** Lets a held timer go on. */
export function resumeTimer(line: Line, slot: number): void {
  if (line.isHeldBack[slot] === 0) return
  line.isHeldBack[slot] = 0
  line.queue.times[slot] = line.now + line.left[slot]!
  line.queue.schedule(slot)
}
