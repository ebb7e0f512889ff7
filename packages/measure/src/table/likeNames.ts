/** Names of a table that differ in capitals, blanks and signs alone: told, and never pooled. */
import { plainWord } from './heads.ts'

/**
 * A sentence for each group of names that may be one.
 *
 * @param kind  what they are counted as, in the plural
 * @example likeNames(['lid', 'Lid'], 'products') // => ['"lid" and "Lid" are counted as different products: are they one?']
 */
export function likeNames(names: Iterable<string>, kind: string): string[] {
  const groups = new Map<string, Set<string>>()
  for (const name of names) {
    const key = plainWord(name)
    const group = groups.get(key) ?? new Set()
    groups.set(key, group.add(name))
  }
  return [...groups.values()]
    .filter(({ size }) => size > 1)
    .map((all) => `${[...all].map((name) => `"${name}"`).join(' and ')} are counted as different ${kind}: are they one?`)
}
