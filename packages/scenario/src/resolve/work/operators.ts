/** Named operators, the stations that they cover, and their walks. */
import type { OperatorSpec, WalkSpec } from '@loopwright/line'
import type { Located } from '../../text/located.ts'
import * as say from '../../problems/messages.ts'
import { addAtKey, type Context, checkName, child, entries, near, quantity, textOf } from '../context.ts'

/** A station by name; a finding where there is none. */
export function findStation(context: Context, at: Located | null, index: ReadonlyMap<string, number>): number | null {
  const name = textOf(at)
  if (at === null || name === null) return null
  const found = index.get(name)
  if (found !== undefined) return found
  if (context.report.isFull()) return null
  const names = [...index.keys()]
  context.report.add(at, say.unknownStation(name, near(context, name, names), names))
  return null
}

export function readOperators(context: Context, root: Located, index: ReadonlyMap<string, number>): OperatorSpec[] {
  return entries(child(root, 'operators')).flatMap((entry) => {
    checkName(context, entry.key, (sentence) => addAtKey(context, entry, sentence))
    const list = child(entry.value, 'stations')
    if (list?.kind === 'list' && list.items.length === 0) context.report.add(list, say.listEmpty())
    const stations = [...new Set((list?.items ?? []).flatMap((at) => findStation(context, at, index) ?? []))]
    const startAt = child(entry.value, 'start')
    if (startAt === null) context.origins.set(`operators.${entry.key}.start`, 'default')
    const start = startAt === null ? stations[0] : findStation(context, startAt, index)
    return start === undefined || start === null ? [] : [{ name: entry.key, stations, start }]
  })
}

export function readWalks(context: Context, root: Located, index: ReadonlyMap<string, number>): WalkSpec[] {
  const pairs = new Set<string>()
  return (child(root, 'walks')?.items ?? []).flatMap((at) => {
    const list = child(at, 'between')
    const ends = (list?.items ?? []).flatMap((item) => findStation(context, item, index) ?? [])
    const seconds = quantity(context, child(at, 'lasts'), 'duration', 'zero')
    const isPair = list?.items.length === 2 && (ends.length < 2 || ends[0] !== ends[1])
    if (list?.kind === 'list' && !isPair) context.report.add(list, say.walkBetween())
    const pair = [...ends].sort((a, b) => a - b).join()
    if (list !== null && isPair && ends.length === 2 && pairs.has(pair)) context.report.add(list, say.walkTwice())
    pairs.add(pair)
    return ends.length === 2 && isPair && seconds !== undefined ? [{ between: [ends[0]!, ends[1]!] as const, seconds }] : []
  })
}
