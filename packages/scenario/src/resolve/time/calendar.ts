/** The shift calendar: shifts and breaks to the line's window and list of breaks. Time 0 is the start of the first shift; time between shifts is left out. */
import type { BreakSpec } from '@loopwright/line'
import type { Located } from '../../text/located.ts'
import * as say from '../../problems/messages.ts'
import type { ShiftStart } from '../../problems/notes.ts'
import { booleanOf, type Context, child, near, textOf } from '../context.ts'
import { readPlainTime } from './plainTime.ts'
import { readDay, type Shift } from './shifts.ts'
import type { Time } from './time.ts'

const SHIFTS_MAX = 3000
const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth']

export function readTime(context: Context, root: Located): Time | null {
  const at = child(root, 'calendar')
  if (at === null) return readPlainTime(context, root)
  for (const key of ['judged', 'warmup', 'length', 'end', 'breaks', 'conveyorDuringBreaks'] as const) {
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
  const shiftStarts: ShiftStart[] = []
  let start = 0
  let warmupSeconds = 0
  let net = 0
  for (let i = 0; i <= judged.last; i++) {
    const shift = day[i % day.length]!
    if (i === judged.first) warmupSeconds = start
    shiftStarts.push({ seconds: start, clockSeconds: shift.fromSeconds })
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
    calendar: {
      judged: judged.name,
      shifts,
      grossSeconds: (start - warmupSeconds) / shifts,
      netSeconds: net / shifts,
      taktSeconds: null,
    },
    netSeconds: (net / shifts) * shifts,
    shiftStarts,
    shiftsPerDay: day.length,
  }
}

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
    context.report.add(at, say.unknownShift(text, near(context, text, [...ORDINALS.map((word) => `${word} shift`), ...names]), known))
    return null
  }
  if (last >= SHIFTS_MAX) {
    context.report.add(at, say.tooManyShifts(SHIFTS_MAX))
    return null
  }
  return { first, last, name: text }
}
