/** Parts of a line that people speak of together: the same stop at several places, variants of one kind. */
import type { LineSpec } from '@loopwright/line'

export interface StopGroup {
  readonly name: string
  readonly sources: readonly string[]
}

export interface MixGroup {
  readonly name: string
  readonly variants: readonly number[]
}

/** Breakdown sources by the name that the file gives them: "shortStop S1" … "shortStop S7" are one group, "shortStop". */
export function stopGroups(line: Pick<LineSpec, 'breakdowns' | 'stations' | 'zones'>): StopGroup[] {
  const groups = new Map<string, string[]>()
  for (const { name, part } of line.breakdowns) {
    const place = part.kind === 'section' ? null : part.kind === 'station' ? line.stations[part.index]!.name : line.zones[part.index]!.name
    const group = place !== null && name.endsWith(` ${place}`) ? name.slice(0, -place.length - 1) : name
    groups.set(group, [...(groups.get(group) ?? []), name])
  }
  return [...groups].map(([name, sources]) => ({ name, sources }))
}

/** Variants by the words their names are made of: "small" and "small + kit" are of the group "small", the second also of "kit". */
export function mixGroups({ variants }: Pick<LineSpec, 'variants'>): MixGroup[] {
  const groups = new Map<string, number[]>()
  for (const [index, variant] of variants.entries()) {
    for (const word of variant.split(' + ')) groups.set(word, [...(groups.get(word) ?? []), index])
  }
  return [...groups].map(([name, inside]) => ({ name, variants: inside }))
}
