/** Stations, tasks and variants of lines made up at random. */
import { PLAIN_STATION, type StationSpec, type TaskSpec, type ZoneSpec } from '@loopwright/line'
import { type Choices, someDistribution, type TimeStyle } from './choices.ts'

interface RandomStations {
  readonly stations: StationSpec[]
  readonly tasks: string[]
  readonly variants: string[]
}

type Duties = { unload: boolean; load: boolean; work: boolean }

export function randomStations(choose: Choices, style: TimeStyle, zones: readonly ZoneSpec[]): RandomStations {
  const variants = Array.from({ length: choose.whole(1, 4) }, (_, index) => `variant ${index}`)
  const tasks: string[] = []
  const usedBy = { unload: new Set<number>(), load: new Set<number>(), work: new Set<number>() }
  const places = choose.shuffled(zones.map((_, index) => index))
  const count = Math.min(zones.length, choose.whole(1, 6))
  const wishes = dutiesOfAll(choose, count)
  const manyTasks = choose.chance(0.5)
  const shares = choose.chance(0.4)

  const stations = wishes.map((wish, index): StationSpec => {
    const here = new Set<number>()
    const duty = (name: 'unload' | 'load' | 'work'): TaskSpec[] | null => {
      if (!wish[name]) return null
      const least = name === 'work' ? 1 : choose.chance(0.3) ? 0 : 1
      const howMany = least === 0 ? 0 : manyTasks ? choose.whole(1, 3) : 1
      return Array.from({ length: howMany }, () => {
        // mostly a task of the same duty elsewhere, now and then one of another duty
        const known = choose.chance(0.85) ? [...usedBy[name]] : tasks.map((_, task) => task)
        const shared = shares && choose.chance(0.5) ? known.filter((task) => !here.has(task)) : []
        const task = shared.length > 0 ? choose.pick(shared) : tasks.push(`task ${tasks.length}`) - 1
        here.add(task)
        usedBy[name].add(task)
        const seconds = variants.map((_, v) => (v > 0 && choose.chance(0.25) ? null : someDistribution(choose, style, 6, true)))
        return { task, seconds }
      })
    }
    const [unload, load, work] = [duty('unload'), duty('load'), duty('work')]
    const automatic = choose.chance(0.3)
    return {
      name: `S${index}`,
      title: `station ${index}`,
      zone: places[index]!,
      unload,
      load,
      work,
      releaseSeconds: choose.chance(0.4) ? { kind: 'constant', value: 0 } : someDistribution(choose, style, 1, true),
      ...PLAIN_STATION,
      operatorsNeeded: automatic ? 0 : 1,
      worksInBreaks: automatic && choose.chance(0.5),
    }
  })
  return { stations, tasks, variants }
}

/** Most lines have a way to load and a way to unload; some lack one or both. */
function dutiesOfAll(choose: Choices, count: number): Duties[] {
  const wishes: Duties[] = Array.from({ length: count }, () => ({ unload: false, load: false, work: true }))
  if (count > 0 && choose.chance(0.9)) {
    const load = choose.whole(0, count - 1)
    const unload = choose.chance(0.6) ? (load + choose.whole(1, count)) % count : load
    wishes[load] = { ...wishes[load]!, load: true, work: choose.chance(0.3) }
    if (choose.chance(0.92)) wishes[unload] = { ...wishes[unload]!, unload: true, work: choose.chance(0.3) }
  }
  for (let index = 0; index < count; index++) {
    if (choose.chance(0.12)) wishes[index]!.load = true
    if (choose.chance(0.12)) wishes[index]!.unload = true
  }
  return wishes
}
