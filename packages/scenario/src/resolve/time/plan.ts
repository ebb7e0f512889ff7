/** The plan: units per shift, per net hour or per clock hour, and what that is in the window. */
import { toNumber } from '../../text/decimal.ts'
import type { Located } from '../../text/located.ts'
import * as say from '../../problems/messages.ts'
import { digitsOf, parseQuantity, scan } from '../../text/quantity.ts'
import type { Plan } from '../../scenario.ts'
import type { Time } from './time.ts'
import { type Context, child, textOf, fail } from '../context.ts'

/** null: no plan; undefined: it is wrong, or the window it is for is not known. */
export function readPlan(context: Context, root: Located, time: Time | null): Plan | null | undefined {
  const at = child(root, 'plan')
  if (at === null) return null
  const text = textOf(at)
  if (text === null) return undefined
  const trimmed = text.trim().replace(/\s+/g, ' ')
  const match = /^(.*?) ?(?:units? )?(?:per (shift|net hour|clock hour)|(?:in|per) ([\d.]+ (?:s|min|h|d)))$/.exec(trimmed)
  if (match === null) {
    const hour = /(per |\/ ?)(h|hour)$/.test(trimmed)
    return fail(context, at, hour ? say.whichHour(text) : say.badPlan(text))
  }
  const scanned = scan(match[1]!, 0)
  if (scanned === null || scanned.unit !== '' || scanned.end < match[1]!.length) return fail(context, at, say.badPlan(text))
  const digits = digitsOf(scanned, trimmed)
  if (digits.fault !== null) return fail(context, at, digits.fault.sentence)
  const units = toNumber(digits.value)
  if (units < 0) return fail(context, at, say.negative(text))
  if (units === 0) return fail(context, at, say.zero(text))
  if (units > 1e9) return fail(context, at, say.beyondReach(text, '1000000000'))
  const lasts = match[3] === undefined ? null : parseQuantity(match[3], 'duration')
  if (lasts !== null && lasts.fault !== null) return fail(context, at, lasts.fault.sentence)
  if (lasts?.value === 0) return fail(context, at, say.zero(match[3]!))
  const per = (match[2] ?? match[3]) as Plan['per']
  if (time === null) return undefined
  if (per === 'shift' && time.calendar === null) return fail(context, at, say.planNeedsShift())
  return { units, per, unitsPerWindow: units * periods(time, per, lasts?.value ?? 3600) }
}

/** @param seconds  of one period that is counted by the clock */
function periods(time: Time, per: Plan['per'], seconds: number): number {
  if (per === 'shift') return time.calendar?.shifts ?? 1
  return (per === 'net hour' ? time.netSeconds : time.window.endSeconds - time.window.warmupSeconds) / seconds
}
