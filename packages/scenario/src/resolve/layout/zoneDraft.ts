/** A zone while it is being put together. */
import { type MergeSpec, STORE, type TransferSpec, type ZoneSpec } from '@loopwright/line'
import type { Located } from '../../text/located.ts'
import * as say from '../../problems/messages.ts'
import type { FileKey } from '../../schema/fileKeys.ts'
import { type Context, child, near, textOf } from '../context.ts'

/** A zone while it is being put together. `undefined` marks a value that is wrong in the file; its finding is in the report. */
export interface ZoneDraft {
  readonly name: string
  readonly generated: boolean
  /** part of `loop`; without one all are */
  readonly inLoop: boolean
  /** not in the loop as the file describes it, but put into it */
  readonly putIn: boolean
  /** where it stands in the file */
  readonly at: Located
  /** places that may hold own values, the strongest first */
  readonly sources: readonly Located[]
  length: number | null | undefined
  sensor: number | undefined
  release: 'single' | 'train'
  turn: 'left' | 'right' | null
  transfer: TransferSpec | null | undefined
  divert: ZoneSpec['divert']
  merge: MergeSpec
}

/** Looks a zone up by name; a finding where there is none. */
export function findZone(context: Context, at: Located | null, drafts: readonly ZoneDraft[]): number | null {
  const name = textOf(at)
  if (at === null || name === null || drafts.length === 0) return null
  const index = context.zoneIndex.get(name)
  if (index !== undefined) return index
  if (context.report.isFull()) return null
  if (context.takenOut.has(name)) {
    context.report.add(at, say.zoneTakenOut(name))
    return null
  }
  const names = drafts.map((zone) => zone.name)
  context.report.add(at, say.unknownZone(name, near(context, name, names), names))
  return null
}

/** Own value of a zone: the first of its places that has the key. */
export function own(zone: ZoneDraft, key: FileKey): Located | null {
  for (const source of zone.sources) {
    const at = child(source, key)
    if (at !== null) return at
  }
  return null
}

/** what the place outside an open line is called */
export const STORE_WORD = 'store'

/** A zone by name, or the store; a finding where there is none. */
export function findPlace(context: Context, at: Located | null, zones: readonly ZoneDraft[]): number | null {
  return textOf(at) === STORE_WORD ? STORE : findZone(context, at, zones)
}
