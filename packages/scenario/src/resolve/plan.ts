/** The plan: units per shift, per net hour or per clock hour, and what that is in the window. */
import { toNumber } from '../decimal.ts'
import type { Located } from '../located.ts'
import * as say from '../messages.ts'
import { digitsOf, scan } from '../quantity.ts'
import type { Plan } from '../scenario.ts'
import type { Time } from './calendar.ts'
import { type Context, child, textOf } from './context.ts'

const FORMS = ['320 per shift', '42 per net hour', '40 per clock hour']

/** null: no plan; undefined: it is wrong, or the window it is for is not known. */
export function readPlan(context: Context, root: Located, time: Time | null): Plan | null | undefined {
  const at = child(root, 'plan')
  if (at === null) return null
  const text = textOf(at)
  if (text === null) return undefined
  const trimmed = text.trim().replace(/\s+/g, ' ')
  const match = /^(.*?) ?(?:units? )?per (shift|net hour|clock hour)$/.exec(trimmed)
  if (match === null) {
    const hour = /(per |\/ ?)(h|hour)$/.test(trimmed)
    return fail(context, at, hour ? say.whichHour(text) : say.badRate(text, FORMS))
  }
  const scanned = scan(match[1]!, 0)
  if (scanned === null || scanned.unit !== '' || scanned.end < match[1]!.length) return fail(context, at, say.badRate(text, FORMS))
  const digits = digitsOf(scanned, trimmed)
  if (digits.fault !== null) return fail(context, at, digits.fault.sentence)
  const units = toNumber(digits.value)
  if (units < 0) return fail(context, at, say.negative(text))
  if (units === 0) return fail(context, at, say.zero(text))
  if (units > 1e9) return fail(context, at, say.beyondReach(text, '1000000000'))
  const per = match[2] as Plan['per']
  if (time === null) return undefined
  if (per === 'shift' && time.calendar === null) return fail(context, at, say.planNeedsShift())
  return { units, per, unitsPerWindow: units * periods(time, per) }
}

function periods(time: Time, per: Plan['per']): number {
  if (per === 'shift') return time.calendar?.shifts ?? 1
  return (per === 'net hour' ? time.netSeconds : time.window.endSeconds - time.window.warmupSeconds) / 3600
}

function fail(context: Context, at: Located, sentence: say.Sentence): undefined {
  context.report.add(at, sentence)
  return undefined
}
