/** Stations of a sketch, and the tasks that they name. */
import { CLOCK_STEP } from '../check/clockStep.ts'
import { sentences as say } from '../check/sentences.ts'
import { nearest } from '../check/nearest.ts'
import type { StationSpec, SupplySpec, TaskSpec } from '../spec.ts'
import { DUTIES } from '../stationTasks.ts'
import { distributionMean } from '@loopwright/stats'
import type { Distribution } from '@loopwright/stats'
import type { Report } from './report.ts'
import type { Duty, LineSketch, StationSketch, SupplySketch, TaskTimes, Time } from './sketch.ts'
import { checkName, checkNames, isTime, type Names, refer, share, time, whole, duration } from './values.ts'

export interface Stations {
  readonly stations: readonly StationSpec[]
  readonly tasks: readonly string[]
}

export function stationsOf(report: Report, sketch: LineSketch, zones: Names, variants: Names): Stations {
  const tasks = createTasks(report, sketch.tasks)
  const taken = new Map<number, string>()
  const stations = Object.entries(sketch.stations ?? {}).map(([name, station]) => {
    checkName(report, `stations.${name}`, name)
    const path = `stations.${name}.zone`
    const hasSlip = report.problems.some((problem) => problem.path.startsWith(`stations.${name}.`))
    const zone = refer(report, path, station.zone, zones)
    const other = zone === null ? undefined : taken.get(zone)
    if (other !== undefined) report.add(path, say.zoneTaken(zones.list[zone!]!, other))
    if (zone !== null) taken.set(zone, name)
    const spec = stationOf(report, name, station, zone ?? 0, tasks, variants)
    // a key that is not known, or cannot be read, may be its duty
    if (!hasSlip && DUTIES.every((duty) => spec[duty] === null)) report.add(`stations.${name}`, say.noDuty(name))
    return spec
  })
  return { stations, tasks: tasks.names }
}

interface Tasks {
  readonly names: readonly string[]
  /** index of a task, a new one where it may be new */
  of(path: string, name: string): number
}

function createTasks(report: Report, given: readonly string[] | undefined): Tasks {
  const names = [...(given ?? [])]
  checkNames(report, 'tasks', names, (name) => `tasks.${name}`)
  const index = new Map(names.map((name, task) => [name, task]))
  return {
    names,
    of(path, name) {
      const known = index.get(name)
      if (known !== undefined) return known
      if (given !== undefined) {
        report.add(path, say.unknownTask(name, nearest(name, names), names))
        return 0
      }
      checkName(report, path, name)
      index.set(name, names.push(name) - 1)
      return names.length - 1
    },
  }
}

function stationOf(report: Report, name: string, station: StationSketch, zone: number, tasks: Tasks, variants: Names): StationSpec {
  const path = `stations.${name}`
  const seen = new Set<string>()
  const duty = (kind: (typeof DUTIES)[number]): TaskSpec[] | null => {
    const wanted = station[kind]
    if (wanted === undefined) return null
    const listed = tasksOf(wanted, `${kind} ${name}`)
    if (kind === 'work' && listed.length === 0) report.add(`${path}.work`, say.workEmpty())
    return listed.map(([task, times]) => {
      const at = `${path}.${kind}.${task}`
      if (seen.has(task)) report.add(at, say.taskTwice(task))
      seen.add(task)
      return { task: tasks.of(at, task), seconds: timesOf(report, at, times, variants) }
    })
  }
  const [unload, load, work] = DUTIES.map(duty)
  const automatic = station.automatic ?? false
  if (station.worksInBreaks === true && !automatic) report.add(`${path}.worksInBreaks`, say.breaksNeedAutomatic())
  if (automatic && station.operatorsNeeded !== undefined)
    report.add(`${path}.operatorsNeeded`, say.onlyOneOf('operatorsNeeded', 'automatic', 'an automatic station needs nobody'))
  const { receiver, safetyStop } = station
  return {
    name,
    title: station.title ?? name,
    zone,
    unload: unload!,
    load: load!,
    work: work!,
    releaseSeconds: time(report, `${path}.release`, station.release ?? 0),
    operatorsNeeded: automatic ? 0 : whole(report, `${path}.operatorsNeeded`, station.operatorsNeeded ?? 1, 1),
    worksInBreaks: station.worksInBreaks ?? false,
    accepts: station.accepts ?? 'good',
    supply: station.supply === undefined ? null : supplyOf(report, `${path}.supply`, station.supply, `supply/${name}`),
    receiver:
      receiver === undefined
        ? null
        : {
            cycleSeconds: time(report, `${path}.receiver.cycle`, receiver.cycle),
            queue: whole(report, `${path}.receiver.queue`, receiver.queue ?? 0, 0),
          },
    safetyStop:
      safetyStop === undefined
        ? null
        : {
            probability: share(report, `${path}.safetyStop.chance`, safetyStop.chance),
            resetSeconds: time(report, `${path}.safetyStop.reset`, safetyStop.reset),
          },
  }
}

const tasksOf = (duty: Duty, usual: string): readonly (readonly [string, TaskTimes])[] =>
  isTime(duty) ? [[usual, duty]] : Object.entries(duty)

/** One entry per variant. */
function timesOf(report: Report, path: string, times: TaskTimes, variants: Names): (Distribution | null)[] {
  const each = (value: Time | null): Distribution | null => (value === null ? null : time(report, path, value))
  if (isTime(times)) return variants.list.map(() => each(times))
  if (!isListed(times)) for (const name of Object.keys(times)) refer(report, `${path}.${name}`, name, variants)
  const given = variants.list.map((name, k) => (isListed(times) ? times[k] : times[name]))
  const without = variants.list.filter((_, k) => given[k] === undefined)
  if (without.length > 0) report.add(path, say.timeMissing(without))
  else if (given.every((value) => value === null)) report.add(path, say.timeForNobody())
  return given.map((value) => each(value ?? null))
}

const isListed = (times: Exclude<TaskTimes, Time>): times is readonly (Time | null)[] => Array.isArray(times)

/** @param name  of its random stream, unless the sketch names one */
export function supplyOf(report: Report, path: string, supply: SupplySketch, name: string): SupplySpec {
  if (supply === 'always') return { name, arrivals: { kind: 'always' }, queueLimit: null }
  const { every, times, queue } = supply
  if (every !== undefined && times !== undefined)
    report.add(`${path}.times`, say.onlyOneOf('times', 'every', 'a supply has one of the two'))
  if (every === undefined && times === undefined) report.add(path, say.supplyForm())
  const queueLimit = queue === undefined ? null : whole(report, `${path}.queue`, queue, 0)
  const named = supply.name ?? name
  if (every === undefined) {
    const instants = (times ?? []).map((instant) => duration(report, `${path}.times`, instant, 'zero'))
    if (instants.some((instant, k) => k > 0 && instant < instants[k - 1]!)) report.add(`${path}.times`, say.timesOrder())
    return { name: named, arrivals: { kind: 'list', instants }, queueLimit }
  }
  const seconds = time(report, `${path}.every`, every)
  if (distributionMean(seconds) < CLOCK_STEP) report.add(`${path}.every`, say.supplyAtOnce())
  return { name: named, arrivals: { kind: 'every', seconds }, queueLimit }
}
