/** A record by the names of states, in their order. */

/** @param value  what stands under each name; `place` is that of the state in the list, and of its column among those of its part */
export function byState<S extends string, T>(states: readonly S[], value: (place: number, state: S) => T): Readonly<Record<S, T>> {
  return Object.fromEntries(states.map((state, place) => [state, value(place, state)])) as Record<S, T>
}
