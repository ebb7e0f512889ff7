/** Sections: zones whose drives stop together. (MODEL.md §1, §7) */
import type { LineSpec } from '../spec.ts'
import { makeWorkList, NONE } from '../state/lists.ts'
import type { Sections } from '../state/stops.ts'

/**
 * Section of each zone, and the zones of each section.
 *
 * @throws RangeError  if a zone is in two sections
 */
export function buildSections(spec: LineSpec): Omit<Sections, 'sectionClocks'> {
  const zoneSection = new Int32Array(spec.zones.length + 1).fill(NONE)
  const first = new Int32Array(spec.sections.length + 1)
  spec.sections.forEach(({ zones, name }, section) => {
    first[section + 1] = first[section]! + zones.length
    for (const zone of zones) {
      if (zoneSection[zone] !== NONE) throw new RangeError(`zone ${spec.zones[zone]!.name} is in section ${name} and in another one`)
      zoneSection[zone] = section
    }
  })
  const items = Int32Array.from(spec.sections.flatMap(({ zones }) => zones))
  return {
    zoneSection,
    sectionZones: { first, items },
    sectionUntil: new Float64Array(spec.sections.length),
    sectionsHeld: makeWorkList(spec.sections.length),
  }
}
