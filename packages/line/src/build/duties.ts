/** The duties of all stations as columns: which there are, and the times of their tasks by variant. (MODEL.md §5) */
import type { Samplers } from '../state/registry.ts'
import type { LineSpec, StationSpec } from '../spec.ts'
import { NONE } from '../state/lists.ts'
import { LOAD_DUTY, UNLOAD_DUTY, type Work, WORK_DUTY } from '../state/work.ts'

type Duties = Pick<Work, 'hasDuty' | 'dutyFirst' | 'entryTask' | 'entrySampler'>

export function buildDuties(spec: LineSpec, samplers: Samplers): Duties {
  const hasDuty = new Uint8Array(3 * spec.stations.length)
  const dutyFirst = new Int32Array(3 * spec.stations.length + 1)
  const entryTask: number[] = []
  const entrySampler: number[] = []
  const tasksOf = (station: StationSpec, duty: number) =>
    duty === UNLOAD_DUTY ? station.unload : duty === LOAD_DUTY ? station.load : duty === WORK_DUTY ? station.work : null
  spec.stations.forEach((station, s) => {
    for (const duty of [UNLOAD_DUTY, LOAD_DUTY, WORK_DUTY]) {
      const tasks = tasksOf(station, duty)
      hasDuty[3 * s + duty] = tasks === null ? 0 : 1
      dutyFirst[3 * s + duty] = entryTask.length
      for (const { task, seconds } of tasks ?? []) {
        entryTask.push(task)
        for (const time of seconds) entrySampler.push(time === null ? NONE : samplers.of(time))
      }
    }
  })
  dutyFirst[3 * spec.stations.length] = entryTask.length
  return { hasDuty, dutyFirst, entryTask: Int32Array.from(entryTask), entrySampler: Int32Array.from(entrySampler) }
}
