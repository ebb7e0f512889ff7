/** What one carrier alone does, lap after lap, for products of one variant: where it stops, and for how long on average. (MODEL.md §5, §12) */
import type { LineSpec, StationSpec, TaskSpec } from '../spec.ts'
import { meanSeconds } from './meanSeconds.ts'

/** One stay in one zone. */
export interface Visit {
  readonly zone: number
  /** it has something to do here, be it for 0 s */
  readonly duty: boolean
  readonly workSeconds: number
  readonly releaseSeconds: number
}

export interface DutyLaps {
  /** visits in travel order, from zone 0 on; whole laps that repeat for ever */
  readonly visits: readonly Visit[]
  /** length of that stretch, ≥ 1 */
  readonly laps: number
  /** products taken off on it */
  readonly units: number
}

interface Load {
  product: boolean
  /** tasks that the product has had */
  had: Set<number>
}

/**
 * The laps of a lone carrier once they repeat: an empty carrier is loaded at the first load station that it meets, and so on.
 *
 * @param spec     one closed loop
 * @param variant  index, 0 … variants − 1
 * @returns        mean seconds per visit; a carrier without a duty in a zone has 0 there
 */
export function dutyLaps(spec: LineSpec, variant: number): DutyLaps {
  const stationAt = new Map(spec.stations.map((station) => [station.zone, station]))
  const load: Load = { product: false, had: new Set() }
  const laps: { start: string; visits: Visit[]; units: number }[] = []
  for (;;) {
    const start = load.product ? [...load.had].sort((a, b) => a - b).join(' ') : 'empty'
    const first = laps.findIndex((lap) => lap.start === start)
    if (first >= 0) {
      const cycle = laps.slice(first)
      return {
        visits: cycle.flatMap((lap) => lap.visits),
        laps: cycle.length,
        units: cycle.reduce((sum, lap) => sum + lap.units, 0),
      }
    }
    const lap = { start, visits: [] as Visit[], units: 0 }
    for (let zone = 0; zone < spec.zones.length; zone += 1) {
      const station = stationAt.get(zone)
      const before = load.product
      const work = station === undefined ? null : stay(station, variant, load)
      if (work?.unloaded === true && before) lap.units += 1
      lap.visits.push({
        zone,
        duty: work !== null,
        workSeconds: work?.seconds ?? 0,
        releaseSeconds: work === null ? 0 : meanSeconds(station!.releaseSeconds),
      })
    }
    laps.push(lap)
  }
}

/** Duties of one stay in their order; changes what the carrier holds; null where it has none. */
function stay(station: StationSpec, variant: number, load: Load): { seconds: number; unloaded: boolean } | null {
  let seconds = 0
  let duty = false
  let unloaded = false
  if (station.unload !== null && load.product) {
    const due = dueTasks(station.unload, variant, load)
    if (station.unload.length === 0 || due.length > 0) {
      seconds += doTasks(due, variant, load)
      load.product = false
      load.had.clear()
      duty = true
      unloaded = true
    }
  }
  if (station.load !== null && !load.product) {
    load.product = true
    seconds += doTasks(dueTasks(station.load, variant, load), variant, load)
    duty = true
  }
  if (station.work !== null && load.product) {
    const due = dueTasks(station.work, variant, load)
    if (due.length > 0) {
      seconds += doTasks(due, variant, load)
      duty = true
    }
  }
  return duty ? { seconds, unloaded } : null
}

const dueTasks = (tasks: readonly TaskSpec[], variant: number, load: Load): TaskSpec[] =>
  tasks.filter((task) => task.seconds[variant] != null && !load.had.has(task.task))

function doTasks(tasks: readonly TaskSpec[], variant: number, load: Load): number {
  let seconds = 0
  for (const task of tasks) {
    seconds += meanSeconds(task.seconds[variant]!)
    load.had.add(task.task)
  }
  return seconds
}
