/** Sections: zones whose drives stop together. Without a word about them one section holds all. */
import { type SectionSpec, wholeLine } from '@loopwright/line'
import type { Located } from '../../text/located.ts'
import * as say from '../../problems/messages.ts'
import { addAtKey, type Context, checkName, child, entries } from '../context.ts'
import { findZone, type ZoneDraft } from './zoneDraft.ts'

export function readSections(context: Context, root: Located, zones: readonly ZoneDraft[]): readonly SectionSpec[] {
  const at = child(root, 'sections')
  if (at === null) {
    context.origins.set('sections', 'default')
    return wholeLine(zones.length)
  }
  const taken = new Set<number>()
  return entries(at).map((entry) => {
    checkName(context, entry.key, (sentence) => addAtKey(context, entry, sentence))
    const found = entry.value.items.flatMap((item) => {
      const zone = findZone(context, item, zones)
      if (zone === null) return []
      if (taken.has(zone)) context.report.add(item, say.sectionTwice(zones[zone]!.name))
      taken.add(zone)
      return [zone]
    })
    return { name: entry.key, zones: found.toSorted((a, b) => a - b) }
  })
}
