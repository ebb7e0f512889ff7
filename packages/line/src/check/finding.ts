/** What a check found, and where: by part and index. Whoever wrote the line knows where that stands: in a file by line and column, in code by name. */
import type { Sentence } from './sentence.ts'

/** The part of a line that a finding is about. */
export interface Place {
  readonly part: 'line' | 'zone' | 'path' | 'carriers' | 'station' | 'stations' | 'corners' | 'paths'
  /** of the zone, path or station; 0 for what there is once */
  readonly index: number
  /** what of it, such as `length`; empty: all of it */
  readonly key: string
}

/** Something wrong with a line, or doubtful, and where. */
export interface Finding {
  readonly place: Place
  /** findings of one rule at one place in the file, or in code, are told together, with all their zones */
  readonly rule: string
  readonly zone: string
  readonly say: (zones: readonly string[]) => Sentence
}

export const at = (part: Place['part'], index = 0, key = ''): Place => ({ part, index, key })

/** A finding by itself. */
export const found = (place: Place, sentence: Sentence): Finding => ({
  place,
  rule: `${sentence.code} ${place.part} ${place.index} ${place.key}`,
  zone: '',
  say: () => sentence,
})

/**
 * Findings as sentences, those of one rule at one place as one.
 *
 * @param where  the place as its owner knows it, and what tells it from others; null: nothing is to be said there
 * @example tellTogether([], () => null) // => []
 */
export function tellTogether<P>(
  findings: readonly Finding[],
  where: (place: Place, rule: string) => { readonly at: P; readonly key: string } | null,
): { at: P; sentence: Sentence }[] {
  const groups = new Map<string, { at: P; zones: string[]; say: Finding['say'] }>()
  for (const { place, rule, zone, say } of findings) {
    const known = where(place, rule)
    if (known === null) continue
    const key = `${rule} ${known.key}`
    const group = groups.get(key)
    if (group === undefined) groups.set(key, { at: known.at, zones: [zone], say })
    else group.zones.push(zone)
  }
  return [...groups.values()].map((group) => ({ at: group.at, sentence: group.say(group.zones) }))
}
