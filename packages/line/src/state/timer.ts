import type { Line } from './line.ts'

/** Starts the timer of `slot`, whose time the caller has written into `line.queue.times[slot]`. */
export function startTimer(line: Line, slot: number): void {
  line.queue.schedule(slot)
}

/** Holds a timer: it keeps the time that it had left. What ends at this very instant still ends. (MODEL.md §1, §7) */
export function holdTimer(line: Line, slot: number): void {
  const { queue, slots } = line
  if (!queue.isPending(slot)) return
  const left = queue.times[slot]! - line.now
  if (left === 0) return
  queue.cancel(slot)
  slots.left[slot] = left
  slots.isHeldBack[slot] = 1
}

/** Lets a held timer go on. */
export function resumeTimer(line: Line, slot: number): void {
  const { slots } = line
  if (slots.isHeldBack[slot] === 0) return
  slots.isHeldBack[slot] = 0
  line.queue.times[slot] = line.now + slots.left[slot]!
  line.queue.schedule(slot)
}
