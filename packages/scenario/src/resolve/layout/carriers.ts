/** Carriers: how many, how large, where they stand at time 0. */
import { type CarriersSpec, STORE } from '@loopwright/line'
import type { Located } from '../../text/located.ts'
import * as say from '../../problems/messages.ts'
import { type Context, child, numberOf, quantityOrNone, textOf } from '../context.ts'
import { findPlace, type ZoneDraft } from './zoneDraft.ts'

export interface CarriersDraft {
  readonly at: Located
  readonly countAt: Located
  readonly startAt: Located | null
  readonly count: number
  readonly length: number | null | undefined
  readonly width: number | null | undefined
  readonly start: CarriersSpec['start'] | undefined
}

export function readCarriers(context: Context, root: Located, zones: readonly ZoneDraft[]): CarriersDraft | null {
  const at = child(root, 'carriers')
  const countAt = child(at, 'count')
  const count = numberOf(countAt)
  if (at === null || at.kind !== 'map' || countAt === null || count === null) return null
  const size = (key: 'length' | 'width'): number | null | undefined => {
    const place = child(at, key)
    if (place === null) context.origins.set(`carriers.${key}`, 'default')
    return place === null ? null : quantityOrNone(context, place, 'length', 'above zero')
  }
  const startAt = child(at, 'start')
  if (startAt === null) context.origins.set('carriers.start', 'default')
  return { at, countAt, startAt, count, length: size('length'), width: size('width'), start: readStart(context, startAt, zones, count) }
}

function readStart(context: Context, at: Located | null, zones: readonly ZoneDraft[], count: number): CarriersSpec['start'] | undefined {
  if (at === null) return 'spread'
  if (at.kind === 'text') {
    const word = textOf(at)
    return word === 'packed' || word === 'store' ? word : 'spread'
  }
  if (at.kind !== 'list') return undefined
  const places: number[] = []
  for (const item of at.items) {
    const zone = findPlace(context, item, zones)
    if (zone === null) continue
    if (zone !== STORE && places.includes(zone)) context.report.add(item, say.startTwice(zones[zone]!.name))
    places.push(zone)
  }
  if (at.items.length !== count) context.report.add(at, say.startLength(at.items.length, count))
  return places
}

export function finishCarriers(draft: CarriersDraft): CarriersSpec | null {
  if (draft.length === undefined || draft.width === undefined || draft.start === undefined) return null
  return { count: draft.count, lengthMetres: draft.length, widthMetres: draft.width, start: draft.start }
}
