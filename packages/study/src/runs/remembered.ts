/** What is asked of many runs again and again, and is the same for all of a kind. */
import type { RunKind } from './task.ts'

/** The same, worked out once for each line and number of carriers. */
export const perCarriers = <T>(of: (kind: RunKind) => T): ((kind: RunKind) => T) =>
  remembered(({ line, carriers }) => `${line}/${carriers}`, of)

/** The same, worked out once for all runs that a store calls by one key. */
export const perKey = <T>(of: (kind: RunKind) => T): ((kind: RunKind) => T) =>
  remembered(({ line, carriers, seed, want }) => JSON.stringify([line, carriers, seed, want]), of)

function remembered<T>(placeOf: (kind: RunKind) => string, of: (kind: RunKind) => T): (kind: RunKind) => T {
  const known = new Map<string, { readonly value: T }>()
  return (kind) => {
    const place = placeOf(kind)
    const found = known.get(place) ?? { value: of(kind) }
    known.set(place, found)
    return found.value
  }
}
