/** Shifts of a day and their breaks. */
import type { BreakSpec } from '@loopwright/line'
import type { Located } from '../../text/located.ts'
import * as say from '../../problems/messages.ts'
import { type Context, checkName, child, entries, numberOf, quantity, textOf } from '../context.ts'

export interface Shift {
  readonly name: string
  readonly fromSeconds: number
  readonly lengthSeconds: number
  readonly breaks: readonly BreakSpec[]
}

const DAY = 86_400

export function readDay(context: Context, at: Located): Shift[] | null {
  const one = child(at, 'shift')
  const several = child(at, 'shifts')
  if ((one === null) === (several === null)) {
    context.report.add(
      at,
      one === null
        ? say.neither(['shift', 'shifts'], 'a calendar needs its shifts')
        : say.onlyOneOf('shift', 'shifts', 'they say the same thing'),
    )
    return null
  }
  const shared = child(at, 'breaks')
  const shifts: (Shift | null)[] = []
  if (one !== null) {
    const shift = readShift(context, one, 'shift', shared)
    const perDay = numberOf(child(one, 'perDay')) ?? 1
    if (shift === null || perDay < 1 || perDay > 1440 || !Number.isInteger(perDay)) return null
    for (let i = 0; i < perDay; i++) shifts.push({ ...shift, fromSeconds: shift.fromSeconds + i * shift.lengthSeconds })
  } else {
    for (const entry of entries(several)) {
      checkName(context, entry.key, (sentence) => context.report.add(entry.value, sentence))
      shifts.push(readShift(context, entry.value, entry.key, child(entry.value, 'breaks') ?? shared))
    }
  }
  if (shifts.includes(null)) return null
  const day = shifts as Shift[]
  if (day.length === 0) context.report.add(several!, say.neither(['a shift'], 'a calendar needs its shifts'))
  checkDay(context, one ?? several!, day)
  return day
}

function checkDay(context: Context, at: Located, day: readonly Shift[]): void {
  const total = day.reduce((sum, shift) => sum + shift.lengthSeconds, 0)
  if (total > DAY) {
    context.report.add(at, say.shiftsTooLong(String(Number((total / 3600).toFixed(2)))))
    return
  }
  let end = Number.NEGATIVE_INFINITY
  for (const shift of day) {
    const from = shift.fromSeconds < end ? shift.fromSeconds + DAY : shift.fromSeconds
    if (from + shift.lengthSeconds > day[0]!.fromSeconds + DAY) context.report.add(at, say.shiftsOverlap(shift.name))
    end = from + shift.lengthSeconds
  }
}

function readShift(context: Context, at: Located, name: string, breaksAt: Located | null): Shift | null {
  const from = readClock(context, child(at, 'from'))
  const to = readClock(context, child(at, 'to'))
  if (from === null || to === null) return null
  if (from === to) {
    context.report.add(at, say.shiftEmpty())
    return null
  }
  const lengthSeconds = to > from ? to - from : to + DAY - from
  const breaks = readBreaks(context, breaksAt, from, lengthSeconds)
  return breaks === null ? null : { name, fromSeconds: from, lengthSeconds, breaks }
}

function readClock(context: Context, at: Located | null): number | null {
  const text = textOf(at)
  const match = text === null ? null : /^\s*(\d{1,2}):([0-5]\d)\s*$/.exec(text)
  if (at === null || text === null) return null
  if (match !== null && Number(match[1]) < 24) return Number(match[1]) * 3600 + Number(match[2]) * 60
  if (match !== null && Number(match[1]) === 24 && match[2] === '00') return DAY
  context.report.add(at, say.badClock(text))
  return null
}

function readBreaks(context: Context, at: Located | null, from: number, shiftSeconds: number): BreakSpec[] | null {
  const breaks: { spec: BreakSpec; at: Located }[] = []
  let whole = true
  for (const item of at?.items ?? []) {
    if (item.kind !== 'map') continue
    const clockAt = child(item, 'at')
    const afterAt = child(item, 'after')
    if ((clockAt === null) === (afterAt === null)) context.report.add(item, say.breakAtOrAfter())
    const clock = readClock(context, clockAt)
    const after = clock === null ? quantity(context, afterAt, 'duration', 'zero') : (clock - from + DAY) % DAY
    const lasts = quantity(context, child(item, 'lasts'), 'duration', 'above zero')
    if (after === undefined || lasts === undefined) whole = false
    else if (after + lasts > shiftSeconds) context.report.add(item, say.breakOutside(minutes(after + lasts), minutes(shiftSeconds)))
    else breaks.push({ spec: { startSeconds: after, lengthSeconds: lasts }, at: item })
  }
  breaks.sort((a, b) => a.spec.startSeconds - b.spec.startSeconds)
  let end = 0
  for (const one of breaks) {
    if (one.spec.startSeconds < end) context.report.add(one.at, say.breaksOverlap())
    end = one.spec.startSeconds + one.spec.lengthSeconds
  }
  const total = breaks.reduce((sum, one) => sum + one.spec.lengthSeconds, 0)
  if (at !== null && total >= shiftSeconds) context.report.add(at, say.noNetTime())
  return whole ? breaks.map((one) => one.spec) : null
}

const minutes = (seconds: number): string => `${Number((seconds / 60).toFixed(2))} min`
