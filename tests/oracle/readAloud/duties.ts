/** What a carrier has to do at a station. (MODEL.md §5) */
import type { StationSpec, TaskSpec } from '@loopwright/line'
import { firstBeyond } from './inverse.ts'
import type { Duty } from './eventLog.ts'
import type { Carrier, Product, World } from './world.ts'

const IN_ORDER: readonly Duty[] = ['unload', 'load', 'work']

/** the tasks of a duty that a product still has to have here: those with a time for its variant, not had before */
function tasksLeft(tasks: readonly TaskSpec[], product: Product): TaskSpec[] {
  return tasks.filter((task) => task.seconds[product.variant] !== null && !product.had.has(task.task))
}

function applies(station: StationSpec, duty: Duty, product: Product | null): boolean {
  const tasks = station[duty]
  if (tasks === null) return false
  if (duty === 'load') return product === null
  if (product === null) return false
  if (duty === 'unload') {
    // "A station with load or unload and no task has a duty of 0 s"; "a variant without a time there has no duty".
    // Tasks that the product has had elsewhere are not done again, but it is taken off all the same.
    return tasks.length === 0 || tasks.some((task) => task.seconds[product.variant] !== null)
  }
  return tasksLeft(tasks, product).length > 0
}

/** the next duty of this carrier at this station, after those that lie behind it; null: none */
export function dutyAhead(station: StationSpec, carrier: Pick<Carrier, 'product' | 'dutiesBehind'>): Duty | null {
  for (const duty of IN_ORDER.slice(carrier.dutiesBehind)) if (applies(station, duty, carrier.product)) return duty
  return null
}

export function dutiesUpTo(duty: Duty): number {
  return IN_ORDER.indexOf(duty) + 1
}

/** seconds of a duty's work: "the sum of the task times for the variant, each drawn from its distribution"; marks nothing as had */
export function drawWorkSeconds(w: World, station: StationSpec, duty: Duty, product: Product): number {
  let seconds = 0
  for (const task of tasksLeft(station[duty]!, product)) {
    seconds += w.draws.forProduct(`task/${w.spec.tasks[task.task]}`, task.seconds[product.variant]!, product.serial)
  }
  return seconds
}

/** "all tasks of that duty count as had": those with a time for the variant; a load task without one counts 0 s and is not had */
export function countAsHad(station: StationSpec, duty: Duty, product: Product): void {
  for (const task of tasksLeft(station[duty]!, product)) product.had.add(task.task)
}

/** whether there is a next product at all, beside `taken` ones set aside (MODEL.md §8) */
export function productIsThere(w: World, taken: number): boolean {
  const mix = w.spec.mix
  return mix.kind !== 'list' || w.productsLoaded + taken < mix.sequence.length
}

/** the variant of product k = 0, 1, … (MODEL.md §8) */
export function variantOf(w: World, k: number): number {
  const mix = w.spec.mix
  switch (mix.kind) {
    case 'random':
      return firstBeyond(w.draws.uniform('mix', k), mix.shares)
    case 'levelled': {
      const sum = mix.shares.reduce((a, b) => a + b, 0)
      let best = 0
      const wants = (v: number): number => mix.shares[v]! * (k + 1) - sum * w.loadedByVariant[v]!
      for (let v = 1; v < mix.shares.length; v++) if (wants(v) > wants(best)) best = v
      return best
    }
    case 'pattern':
      return mix.sequence[k % mix.sequence.length]!
    case 'list':
      return mix.sequence[k]!
  }
}
