/** Operators and walks of a sketch, and what becomes of rejected products. */
import { sentences as say } from '../check/sentences.ts'
import type { InspectionSpec, LineSpec, OperatorSpec, ReworkSpec, StationSpec, WalkSpec } from '../spec.ts'
import type { Report } from './report.ts'
import type { LineSketch } from './sketch.ts'
import { amount, checkName, type Names, namesOf, refer, share } from './values.ts'

export const operatorsOf = (report: Report, { operators = {} }: LineSketch, stations: Names): OperatorSpec[] =>
  Object.entries(operators).map(([name, operator]) => {
    const path = `operators.${name}`
    checkName(report, path, name)
    if (operator.stations.length === 0) report.add(`${path}.stations`, say.listEmpty())
    const covers = [...new Set(operator.stations.map((station) => refer(report, `${path}.stations`, station, stations)))]
    const start = operator.start === undefined ? (covers[0] ?? 0) : refer(report, `${path}.start`, operator.start, stations)
    return { name, stations: covers, start }
  })

export const walksOf = (report: Report, { walks = [] }: LineSketch, stations: Names): WalkSpec[] =>
  walks.map(({ between, lasts }, k) => {
    const ends = between.map((station) => refer(report, `walks[${k}].between`, station, stations))
    if (ends.length !== 2 || between[0] === between[1]) report.add(`walks[${k}].between`, say.walkBetween())
    return { between: [ends[0]!, ends[1]!], seconds: amount(report, `walks[${k}].lasts`, lasts, 'zero') }
  })

const stands = (stations: readonly StationSpec[], duty: 'unload' | 'load', task: number): boolean =>
  stations.some((station) => station[duty]?.some((one) => one.task === task) === true)

export function rejectsOf(
  report: Report,
  { inspections = {}, rework = {} }: LineSketch,
  { stations, tasks }: Pick<LineSpec, 'stations' | 'tasks'>,
): { inspections: InspectionSpec[]; rework: ReworkSpec[] } {
  const names = namesOf(tasks, say.unknownTask)
  return {
    inspections: Object.entries(inspections)
      .map(([name, chance]) => {
        const path = `inspections.${name}`
        const task = refer(report, path, name, names)
        if (stands(stations, 'unload', task)) report.add(path, say.inspectionPlace(name))
        return { task, rejectProbability: share(report, path, chance) }
      })
      .sort((a, b) => a.task - b.task),
    rework: Object.entries(rework)
      .map(([name, how]) => {
        const path = `rework.${name}`
        const task = refer(report, path, name, names)
        if (stands(stations, 'unload', task) || stands(stations, 'load', task)) report.add(path, say.reworkPlace(name))
        return { task, only: how === 'only' }
      })
      .sort((a, b) => a.task - b.task),
  }
}
