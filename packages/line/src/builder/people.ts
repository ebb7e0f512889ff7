/** Operators and walks of a sketch, and what becomes of rejected products. */
import { sentences as say } from '../check/sentences.ts'
import type { InspectionSpec, LineSpec, OperatorSpec, ReworkSpec, StationSpec, WalkSpec } from '../spec.ts'
import type { Report } from './report.ts'
import type { LineSketch } from './sketch.ts'
import { checkName, type Names, namesOf, refer, referAll, duration, share } from './values.ts'

export const operatorsOf = (report: Report, { operators = {} }: LineSketch, stations: Names): OperatorSpec[] =>
  Object.entries(operators).map(([name, operator]) => {
    const path = `operators.${name}`
    checkName(report, path, name)
    if (operator.stations.length === 0) report.add(`${path}.stations`, say.listEmpty())
    const covers = [...new Set(referAll(report, `${path}.stations`, operator.stations, stations))]
    const start = operator.start === undefined ? covers[0] : refer(report, `${path}.start`, operator.start, stations)
    return { name, stations: covers, start: start ?? 0 }
  })

export function walksOf(report: Report, { walks = [] }: LineSketch, stations: Names): WalkSpec[] {
  const pairs = new Set<string>()
  return walks.flatMap(({ between, lasts }, k) => {
    const [from, to, ...more] = referAll(report, `walks[${k}].between`, between, stations)
    const lastsSeconds = duration(report, `walks[${k}].lasts`, lasts, 'zero')
    if (between.length !== 2 || (from !== undefined && from === to)) report.add(`walks[${k}].between`, say.walkBetween())
    if (from === undefined || to === undefined || more.length > 0) return []
    const pair = `${Math.min(from, to)} ${Math.max(from, to)}`
    if (pairs.has(pair)) report.add(`walks[${k}].between`, say.walkTwice())
    pairs.add(pair)
    return [{ between: [from, to], seconds: lastsSeconds }]
  })
}

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
      .flatMap(([name, chance]) => {
        const path = `inspections.${name}`
        const task = refer(report, path, name, names)
        if (task === null) return []
        if (stands(stations, 'unload', task)) report.add(path, say.inspectionPlace(name))
        return [{ task, rejectProbability: share(report, path, chance) }]
      })
      .sort((a, b) => a.task - b.task),
    rework: Object.entries(rework)
      .flatMap(([name, how]) => {
        const path = `rework.${name}`
        const task = refer(report, path, name, names)
        if (task === null) return []
        if (stands(stations, 'unload', task) || stands(stations, 'load', task)) report.add(path, say.reworkPlace(name))
        return [{ task, only: how === 'only' }]
      })
      .sort((a, b) => a.task - b.task),
  }
}
