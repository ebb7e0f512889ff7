import type { Observation } from './observation.ts'

/**
 * Times of the same task and variant, in the order they stand; variants of a task after one another.
 *
 * @example byTask(['wire', 'fit', 'wire'].map((task, index) => ({ task, variant: null, operator: null, observedSeconds: 45, rating: null, when: null, line: index + 2, place: '' }))).map((group) => group.length) // => [2, 1]
 */
export function byTask(observations: readonly Observation[]): Observation[][] {
  const tasks = new Map<string, Map<string | null, Observation[]>>()
  for (const one of observations) {
    const variants = tasks.get(one.task) ?? new Map<string | null, Observation[]>()
    tasks.set(one.task, variants)
    const group = variants.get(one.variant)
    if (group === undefined) variants.set(one.variant, [one])
    else group.push(one)
  }
  return [...tasks.values()].flatMap((variants) => [...variants.values()])
}
