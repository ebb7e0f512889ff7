/** What a carrier has to do at a station. (MODEL.md §5) */
import type { StationSpec, TaskSpec } from '@loopwright/line'
import type { Duty } from './eventLog.ts'
import { firstBeyond } from './inverse.ts'
import type { Carrier, Product, World } from './world.ts'

const IN_ORDER: readonly Duty[] = ['unload', 'load', 'work']

type Stay = Pick<Carrier, 'product' | 'dutiesBehind'>

/** "Wherever its carrier comes to one of them, it is done again, at the next arrival, not in the same duty" (nor in another of that stay) */
function isOnList(task: number, product: Product, atArrival: boolean): boolean {
  return product.rejected && product.list.has(task) && (atArrival || !product.listIsNew)
}

function isReworkOnly(w: World, task: number): boolean {
  return w.spec.rework.some((rework) => rework.task === task && rework.only)
}

/** the tasks of a duty that a product has to have here: those with a time for its variant, not had before or on its list */
function tasksLeft(w: World, tasks: readonly TaskSpec[], product: Product, atArrival: boolean): TaskSpec[] {
  return tasks.filter(({ task, seconds }) => {
    if (seconds[product.variant] === null) return false
    if (isOnList(task, product, atArrival)) return true
    return !isReworkOnly(w, task) && !product.had.has(task)
  })
}

function applies(w: World, station: StationSpec, duty: Duty, { product, dutiesBehind }: Stay): boolean {
  const tasks = station[duty]
  if (tasks === null) return false
  if (duty === 'load') return product === null
  if (product === null) return false
  if (duty === 'unload') {
    // "`unload` takes good products only, unless it `accepts` `rejected` or `all`"
    if (station.accepts !== 'all' && (station.accepts === 'rejected') !== product.rejected) return false
    // "A station with load or unload and no task has a duty of 0 s"; "a variant without a time there has no duty".
    // Tasks that the product has had elsewhere are not done again, but it is taken off all the same.
    return tasks.length === 0 || tasks.some((task) => task.seconds[product.variant] !== null)
  }
  return tasksLeft(w, tasks, product, dutiesBehind === 0).length > 0
}

/** the next duty of this carrier at this station, after those that lie behind it; null: none */
export function dutyAhead(w: World, station: number, stay: Stay): Duty | null {
  for (const duty of IN_ORDER.slice(stay.dutiesBehind)) if (applies(w, w.spec.stations[station]!, duty, stay)) return duty
  return null
}

/** whether a carrier with this product (null: empty) has a duty at the station when it comes there */
export function hasDutyAtArrival(w: World, station: number, product: Product | null): boolean {
  return dutyAhead(w, station, { product, dutiesBehind: 0 }) !== null
}

export function dutiesUpTo(duty: Duty): number {
  return IN_ORDER.indexOf(duty) + 1
}

/** the tasks that are done in a duty which starts now */
export function tasksOfDuty(w: World, station: number, duty: Duty, { product, dutiesBehind }: Carrier): TaskSpec[] {
  return tasksLeft(w, w.spec.stations[station]![duty]!, product!, dutiesBehind === 0)
}

/** seconds of a duty's work: "the sum of the task times for the variant, each drawn from its distribution"; marks nothing as had */
export function drawWorkSeconds(w: World, tasks: readonly TaskSpec[], product: Product): number {
  let seconds = 0
  for (const { task, seconds: times } of tasks) {
    const [name, time] = [w.spec.tasks[task]!, times[product.variant]!]
    // "a repeated task or inspection … is taken in order of use"
    seconds += product.had.has(task) ? w.draws.inOrder(`rework/${name}`, time) : w.draws.forProduct(`task/${name}`, time, product.serial)
  }
  return seconds
}

/** Ends a duty's tasks: "all tasks of that duty count as had", the list grows shorter, inspections decide. Returns whether the product has been rejected. */
export function countAsHad(w: World, tasks: readonly TaskSpec[], product: Product): boolean {
  const again = new Set(tasks.filter(({ task }) => product.had.has(task)).map(({ task }) => task))
  const { list } = product
  const hadList = list.size > 0
  for (const { task } of tasks) {
    product.had.add(task)
    if (!product.listIsNew) list.delete(task)
  }
  if (hadList && list.size === 0) product.rejected = false // "when the last task of the list has been done, the product is good"
  let isRejected = false
  for (const { task } of tasks) if (inspectionRejects(w, task, product, again.has(task))) isRejected = true
  if (!isRejected) return false
  product.rejected = true
  // "all tasks marked `rework` that it has had, and those marked `rework: only`"
  product.list = new Set(w.spec.rework.filter(({ task, only }) => only || product.had.has(task)).map(({ task }) => task))
  product.listIsNew = true
  return true
}

/** "rejected if u < its probability (0 takes no draw)" */
function inspectionRejects(w: World, task: number, product: Product, again: boolean): boolean {
  const inspection = w.spec.inspections.find((one) => one.task === task)
  if (inspection === undefined || inspection.rejectProbability === 0) return false
  const name = w.spec.tasks[task]!
  const u = again ? w.draws.uniformInOrder(`inspect-again/${name}`) : w.draws.uniform(`inspect/${name}`, product.serial)
  return u < inspection.rejectProbability
}

/** whether the list of products has one more, beside `taken` ones set aside (MODEL.md §8) */
export function listHasMore(w: World, taken: number): boolean {
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
