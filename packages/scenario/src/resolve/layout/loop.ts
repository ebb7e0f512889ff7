/** The short forms of a loop: `22 zones of 1.5 m`, or a list of groups and zones. */

import type { Located } from '../../text/located.ts'
import * as say from '../../problems/messages.ts'
import { parseQuantity } from '../../text/quantity.ts'
import { type Context, child, textOf } from '../context.ts'

export const ZONES_MAX = 5000
const PHRASE = /^\s*(\d+)\s*(?:zones?\s+of|×|x|\*)\s*(.*)$/i

export interface Unnamed {
  readonly name: string | null
  readonly at: Located
  readonly own: Located | null
  readonly length: number | null | undefined
}

export function readLoop(context: Context, loop: Located): Unnamed[] | null {
  if (loop.kind === 'text') return group(context, loop)
  if (loop.kind !== 'list') return null
  const zones: Unnamed[] = []
  let whole = true
  for (const item of loop.items) {
    if (zones.length > ZONES_MAX) break
    if (item.kind === 'map') zones.push({ name: textOf(child(item, 'name')), at: item, own: item, length: null })
    else {
      const made = group(context, item)
      if (made === null) whole = false
      else zones.push(...made.slice(0, ZONES_MAX + 1 - zones.length))
    }
  }
  return whole ? zones : null
}

/** `22 zones of 1.5 m` or `6 × 1.5 m`. */
function group(context: Context, at: Located): Unnamed[] | null {
  const text = textOf(at)
  const match = text === null ? null : PHRASE.exec(text)
  if (text === null) return null
  if (match === null) {
    context.report.add(at, say.badLoop(text))
    return null
  }
  const count = Number(match[1])
  if (count > ZONES_MAX) {
    context.report.add(at, say.tooManyZones(match[1]!, ZONES_MAX))
    return null
  }
  const rest = match[2]!
  const outcome = parseQuantity(rest, 'length')
  const start = text.length - rest.length
  if (outcome.fault !== null) context.report.add(at, outcome.fault.sentence, start + outcome.fault.start, outcome.fault.length)
  else if (outcome.value === 0) context.report.add(at, say.zero(rest), start, rest.length)
  const length = outcome.value === null || outcome.value === 0 ? undefined : outcome.value
  return Array.from({ length: count }, () => ({ name: null, at, own: null, length }))
}
