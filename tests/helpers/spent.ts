/**
 * The states in which any time was spent, with their seconds: what a test of a timeline writes down.
 *
 * @param seconds  of a station, zone or carrier, by state
 */
export function spent<S extends string>(seconds: Readonly<Record<S, number>>): Partial<Record<S, number>> {
  return Object.fromEntries(Object.entries<number>(seconds).filter(([, each]) => each !== 0)) as Partial<Record<S, number>>
}

/** Seconds of all states together. */
export const total = (seconds: Readonly<Record<string, number>>): number => Object.values(seconds).reduce((sum, each) => sum + each, 0)

/** The same states with other values. */
export const mapStates = <S extends string>(seconds: Readonly<Record<S, number>>, change: (each: number) => number): Record<S, number> =>
  Object.fromEntries(Object.entries<number>(seconds).map(([state, each]) => [state, change(each)])) as Record<S, number>
