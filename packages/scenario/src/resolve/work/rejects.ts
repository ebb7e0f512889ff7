/** Tasks that inspect, and tasks that rejected products have again. */
import type { InspectionSpec, ReworkSpec } from '@loopwright/line'
import type { Entry, Located } from '../../text/located.ts'
import * as say from '../../problems/messages.ts'
import { addAtKey, type Context, child, entries, fraction, near, textOf } from '../context.ts'
import type { StationDraft } from './stations.ts'

/** Index of the task that an entry is about; null, with a finding, where no station has it. */
function findTask(context: Context, entry: Entry, tasks: readonly string[]): number | null {
  const index = tasks.indexOf(entry.key)
  if (index < 0) addAtKey(context, entry, say.unknownTask(entry.key, near(context, entry.key, tasks), tasks))
  return index < 0 ? null : index
}

const stands = (stations: readonly StationDraft[], duty: 'unload' | 'load', task: number): boolean =>
  stations.some(({ spec }) => spec?.[duty]?.some((one) => one.task === task) === true)

export function readInspections(
  context: Context,
  root: Located,
  tasks: readonly string[],
  stations: readonly StationDraft[],
): InspectionSpec[] {
  const found = entries(child(root, 'inspections')).flatMap((entry) => {
    const task = findTask(context, entry, tasks)
    const rejectProbability = fraction(context, entry.value, 'one')
    if (task !== null && stands(stations, 'unload', task)) addAtKey(context, entry, say.inspectionPlace(entry.key))
    return task === null || rejectProbability === undefined ? [] : [{ task, rejectProbability }]
  })
  return found.sort((a, b) => a.task - b.task)
}

export function readRework(context: Context, root: Located, tasks: readonly string[], stations: readonly StationDraft[]): ReworkSpec[] {
  const found = entries(child(root, 'rework')).flatMap((entry) => {
    const task = findTask(context, entry, tasks)
    if (task === null) return []
    if (stands(stations, 'unload', task) || stands(stations, 'load', task)) addAtKey(context, entry, say.reworkPlace(entry.key))
    return [{ task, only: textOf(entry.value) === 'only' }]
  })
  return found.sort((a, b) => a.task - b.task)
}
