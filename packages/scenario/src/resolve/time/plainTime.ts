/** A run without shifts: the file says warm-up, length and breaks itself. */
import type { BreakSpec, WindowSpec } from '@loopwright/line'
import type { Located } from '../../text/located.ts'
import * as say from '../../problems/messages.ts'
import type { Calendar } from '../../scenario.ts'
import type { Time } from './time.ts'
import { booleanOf, type Context, child, numberOf, quantity, textOf } from '../context.ts'

/** Without a calendar the file says warm-up and length itself. */
export function readPlainTime(context: Context, root: Located): Time | null {
  const warmupAt = child(root, 'warmup')
  const lengthAt = child(root, 'length')
  const endAt = child(root, 'end')
  const judgedAt = child(root, 'judged')
  if (warmupAt === null)
    context.report.add(root, say.neither(['calendar', 'warmup'], 'give a "calendar", or "warmup" and "length" for a run without shifts'))
  else if (lengthAt === null && endAt === null)
    context.report.add(warmupAt, say.neither(['length', 'end'], 'say how long the run is counted after the warm-up'))
  if (lengthAt !== null && endAt !== null) context.report.add(endAt, say.onlyOneOf('end', 'length', 'one follows from the other'))
  const breaks = readList(context, child(root, 'breaks'))
  if (child(root, 'breaks') === null) context.origins.set('breaks', 'default')
  const conveyor = booleanOf(child(root, 'conveyorDuringBreaks'))
  if (conveyor === null) context.origins.set('conveyorDuringBreaks', 'default')
  const calendar = judgedAt === null ? null : readJudged(context, judgedAt)
  const warmupSeconds = quantity(context, warmupAt, 'duration', 'zero')
  const length = quantity(context, lengthAt, 'duration', 'above zero')
  const end = quantity(context, endAt, 'duration', 'above zero')
  if (warmupSeconds === undefined || breaks === null || calendar === undefined) return null
  const endSeconds = end ?? (length === undefined ? undefined : warmupSeconds + length)
  if (endSeconds === undefined) return null
  if (lengthAt !== null) context.origins.set('end', 'warmup + length')
  if (!(endSeconds > warmupSeconds)) {
    context.report.add((endAt ?? lengthAt)!, say.windowEmpty())
    return null
  }
  for (const [i, one] of breaks.entries())
    if (one.startSeconds >= endSeconds) context.report.add(child(root, 'breaks')!.items[i]!, say.breakBeyondEnd())
  const sorted = breaks.toSorted((a, b) => a.startSeconds - b.startSeconds)
  const window = { warmupSeconds, endSeconds }
  const netSeconds = calendar === null ? endSeconds - warmupSeconds - inBreaks(sorted, window) : calendar.netSeconds * calendar.shifts
  return { window, breaks: sorted, conveyorDuringBreaks: conveyor ?? true, calendar, netSeconds, shiftStarts: [], shiftsPerDay: 1 }
}

function readList(context: Context, at: Located | null): BreakSpec[] | null {
  const breaks: BreakSpec[] = []
  for (const item of at?.items ?? []) {
    const startSeconds = quantity(context, child(item, 'after'), 'duration', 'zero')
    const lengthSeconds = quantity(context, child(item, 'lasts'), 'duration', 'above zero')
    if (startSeconds === undefined || lengthSeconds === undefined) return null
    breaks.push({ startSeconds, lengthSeconds })
  }
  return breaks
}

function readJudged(context: Context, at: Located): Calendar | undefined {
  const judged = textOf(child(at, 'name'))
  const shifts = numberOf(child(at, 'shifts'))
  const grossSeconds = quantity(context, child(at, 'gross'), 'duration', 'above zero')
  const netSeconds = quantity(context, child(at, 'net'), 'duration', 'above zero')
  if (judged === null || shifts === null || grossSeconds === undefined || netSeconds === undefined) return undefined
  return { judged, shifts, grossSeconds, netSeconds, taktSeconds: null }
}

/** Seconds of the window that lie in a break; overlapping breaks count once. */
function inBreaks(breaks: readonly BreakSpec[], window: WindowSpec): number {
  let sum = 0
  let done = window.warmupSeconds
  for (const one of breaks) {
    const from = Math.max(done, one.startSeconds)
    const to = Math.min(window.endSeconds, one.startSeconds + one.lengthSeconds)
    if (to > from) sum += to - from
    done = Math.max(done, to)
  }
  return sum
}
