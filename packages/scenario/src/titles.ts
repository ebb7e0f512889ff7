/** What people call the parts of a line, and which of them they speak of together. */
import type { Scenario } from './scenario.ts'

/** What may have a title beside its name. */
export type Titled = 'station' | 'stop' | 'task' | 'variant' | 'option'

/** Breakdown sources that are one stop to people. */
export interface StopGroup {
  /** the title of the stop */
  readonly name: string
  /** names of breakdowns of the line */
  readonly sources: readonly string[]
}

/** Variants that are one thing to people: a variant as written, or an option. */
export interface MixGroup {
  /** the title of the group */
  readonly name: string
  /** indices of variants of the line */
  readonly variants: readonly number[]
}

type Known = Pick<Scenario, 'line' | 'titles' | 'stopEntries' | 'variantGroups'>

/**
 * The title of a part; its name where it has none, or where the scenario does not know it.
 *
 * A stop goes by the name of the file or by that of one of its sources; a source of a stop at several places has the place behind it.
 *
 * @example titleOf({ line: { stations: [] }, titles: { tasks: { wire: 'Wiring' }, variants: {} }, stopEntries: [], variantGroups: [] }, 'task', 'wire') // => 'Wiring'
 */
export function titleOf(scenario: Known, kind: Titled, name: string): string {
  const { line, titles, stopEntries, variantGroups } = scenario
  const station = (key: string): string => line.stations.find((each) => each.name === key)?.title ?? key
  const said = (record: Readonly<Record<string, string>>): string => (Object.hasOwn(record, name) ? record[name]! : name)
  switch (kind) {
    case 'station':
      return station(name)
    case 'task':
      return said(titles.tasks)
    case 'variant':
      return said(titles.variants)
    case 'option':
      return variantGroups.find((group) => group.name === name)?.title ?? name
    case 'stop': {
      const entry = stopEntries.find((each) => each.name === name)
      if (entry !== undefined) return entry.title
      for (const { title, sources } of stopEntries) {
        const source = sources.find((each) => each.source === name)
        if (source !== undefined) return sources.length === 1 ? title : `${title}, ${station(source.place)}`
      }
      return name
    }
  }
}

/**
 * Each stop of the file with all its sources, in the order of the file.
 *
 * @example stopGroups(scenario).map(({ name }) => name) // => ['jam', 'tool']
 */
export function stopGroups({ stopEntries }: Pick<Scenario, 'stopEntries'>): StopGroup[] {
  return stopEntries.map(({ title, sources }) => ({ name: title, sources: sources.map(({ source }) => source) }))
}

/**
 * Variants as written, then options: the share of each is one thing to ask about.
 *
 * @example mixGroups(scenario).length // => 1
 */
export function mixGroups({ variantGroups }: Pick<Scenario, 'variantGroups'>): MixGroup[] {
  return variantGroups.map(({ title, variants }) => ({ name: title, variants }))
}
