/** The shift calendar: shifts and breaks to the line's window and list of breaks. Time 0 is the start of the first shift; time between shifts is left out. */
import type { BreakSpec, WindowSpec } from '@loopwright/line'
import * as say from '../messages.ts'
import { nearest } from '../nearest.ts'
import type { Calendar } from '../scenario.ts'
import type { Located } from '../source.ts'
import { booleanOf, type Context, checkName, child, entries, numberOf, quantity, textOf } from './context.ts'

export interface Time {
  readonly window: WindowSpec
  readonly breaks: readonly BreakSpec[]
  readonly conveyorDuringBreaks: boolean
  /** takt still open */
  readonly calendar: Calendar | null
  /** of the whole window, without breaks */
  readonly netSeconds: number
}

interface Shift {
  readonly name: string
  readonly fromSeconds: number
  readonly lengthSeconds: number
  readonly breaks: readonly BreakSpec[]
}

const DAY = 86_400
const SHIFTS_MAX = 3000
const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth']

export function readTime(context: Context, root: Located): Time | null {
  const at = child(root, 'calendar')
  if (at === null) return readPlainTime(context, root)
  for (const key of ['judged', 'warmup', 'length', 'end', 'breaks', 'conveyorDuringBreaks']) {
    const other = child(root, key)
    if (other !== null) context.report.add(other, say.onlyOneOf(key, 'calendar', 'the calendar says it already'))
  }
  if (at.kind !== 'map') return null
  const day = readDay(context, at)
  if (!at.entries.has('conveyorDuringBreaks')) context.origins.set('conveyorDuringBreaks', 'default')
  if (day === null || day.length === 0) return null
  const judged = readJudge(context, child(at, 'judge'), day)
  return judged === null ? null : spread(context, at, day, judged)
}

/** All shifts from the first to the last judged one, end to end. */
function spread(context: Context, at: Located, day: readonly Shift[], judged: { first: number; last: number; name: string }): Time {
  const breaks: BreakSpec[] = []
  let start = 0
  let warmupSeconds = 0
  let net = 0
  for (let i = 0; i <= judged.last; i++) {
    const shift = day[i % day.length]!
    if (i === judged.first) warmupSeconds = start
    for (const one of shift.breaks) breaks.push({ startSeconds: start + one.startSeconds, lengthSeconds: one.lengthSeconds })
    if (i >= judged.first) net += shift.lengthSeconds - shift.breaks.reduce((sum, one) => sum + one.lengthSeconds, 0)
    start += shift.lengthSeconds
  }
  if (judged.first === 0) context.report.add(child(at, 'judge') ?? at, say.noWarmup())
  const shifts = judged.last - judged.first + 1
  for (const key of ['warmup', 'end', 'breaks']) context.origins.set(key, 'from the calendar')
  return {
    window: { warmupSeconds, endSeconds: start },
    breaks,
    conveyorDuringBreaks: booleanOf(child(at, 'conveyorDuringBreaks')) ?? true,
    calendar: { judged: judged.name, shifts, grossSeconds: (start - warmupSeconds) / shifts, netSeconds: net / shifts, taktSeconds: null },
    netSeconds: (net / shifts) * shifts,
  }
}

function readDay(context: Context, at: Located): Shift[] | null {
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
    if (shift === null || perDay > 1440) return null
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
    const from = shift.fromSeconds < end && end > DAY ? shift.fromSeconds + DAY : shift.fromSeconds
    if (from < end || from + shift.lengthSeconds > day[0]!.fromSeconds + DAY) context.report.add(at, say.shiftsOverlap(shift.name))
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

/** Which shifts count, from 0; and what to call them. */
function readJudge(context: Context, at: Located | null, day: readonly Shift[]): { first: number; last: number; name: string } | null {
  const text = textOf(at)?.trim().replace(/\s+/g, ' ')
  if (at === null || text === undefined) return null
  const named = day.findIndex((shift) => shift.name === text && shift.name !== 'shift')
  const ordinal = ORDINALS.findIndex((word) => text === `${word} shift`)
  const single = /^shift (\d+)$/.exec(text)
  const range = /^shifts (\d+) ?(?:to|\.\.) ?(\d+)$/.exec(text)
  const oneDay = /^day (\d+)$/.exec(text)
  let first = named >= 0 ? named : ordinal
  let last = first
  if (single !== null) first = last = Number(single[1]) - 1
  if (range !== null) {
    first = Number(range[1]) - 1
    last = Number(range[2]) - 1
  }
  if (oneDay !== null) {
    first = (Number(oneDay[1]) - 1) * day.length
    last = first + day.length - 1
  }
  if (first < 0 || last < first) {
    const names = day.filter((shift) => shift.name !== 'shift').map((shift) => shift.name)
    const known = [...names, 'second shift', 'shift 2', 'shifts 2 to 6', 'day 2']
    context.report.add(at, say.unknownShift(text, nearest(text, [...ORDINALS.map((word) => `${word} shift`), ...names]), known))
    return null
  }
  if (last >= SHIFTS_MAX) {
    context.report.add(at, say.tooManyShifts(SHIFTS_MAX))
    return null
  }
  return { first, last, name: text }
}

/** Without a calendar the file says warm-up and length itself. */
function readPlainTime(context: Context, root: Located): Time | null {
  const warmupAt = child(root, 'warmup')
  const lengthAt = child(root, 'length')
  const endAt = child(root, 'end')
  const judgedAt = child(root, 'judged')
  if (warmupAt === null)
    context.report.add(root, say.neither(['calendar', 'warmup'], 'give a "calendar", or "warmup" and "length" for a run without shifts'))
  else if (lengthAt === null && endAt === null)
    context.report.add(root, say.neither(['length', 'end'], 'say how long the run is counted after the warm-up'))
  if (lengthAt !== null && endAt !== null) context.report.add(endAt, say.onlyOneOf('end', 'length', 'one follows from the other'))
  const breaks = readList(context, child(root, 'breaks'))
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
  return { window, breaks: sorted, conveyorDuringBreaks: conveyor ?? true, calendar, netSeconds }
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
