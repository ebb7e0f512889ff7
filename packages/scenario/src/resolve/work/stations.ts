/** Stations, their duties and the times of their tasks by variant. */
import { DUTIES, type StationSpec, type TaskSpec } from '@loopwright/line'
import type { Distribution } from '@loopwright/stats'
import { type Entry, joinPath, type Located } from '../../text/located.ts'
import * as say from '../../problems/messages.ts'
import {
  addAtKey,
  booleanOf,
  type Context,
  checkLength,
  checkName,
  child,
  entries,
  fraction,
  near,
  numberOf,
  TITLE_MAX,
  textOf,
} from '../context.ts'
import { readDistribution } from './distribution.ts'
import type { Products } from './products.ts'
import { readSupply } from './supply.ts'
import { longer, readTimes } from './taskTimes.ts'
import { createTitles, type Titles } from '../titles.ts'
import { findZone, type ZoneDraft } from '../layout/zoneDraft.ts'

export interface StationDraft {
  readonly name: string
  readonly at: Located
  readonly zone: number | null
  readonly spec: StationSpec | null
}

export interface Stations {
  readonly tasks: readonly string[]
  /** of tasks, by name, where they differ from it */
  readonly taskTitles: ReadonlyMap<string, string>
  readonly stations: readonly StationDraft[]
}

/** keys of a station that are no duty; any other may be a misspelt one */
const NO_DUTIES = new Set([
  ...['name', 'zone', 'release', 'automatic', 'worksInBreaks', 'operatorsNeeded', 'accepts', 'supply', 'receiver', 'safetyStop'],
])

export function readStations(context: Context, root: Located, zones: readonly ZoneDraft[], products: Products): Stations {
  const tasks = readTaskOrder(context, root)
  const taken = new Map<number, string>()
  const stations = entries(child(root, 'stations')).map((entry) => {
    checkName(context, entry.key, (sentence) => addAtKey(context, entry, sentence))
    return readStation(context, root, entry, zones, products, tasks, taken)
  })
  checkAdds(context, products, tasks)
  return { tasks: tasks.names, taskTitles: tasks.titles.given(), stations }
}

interface TaskOrder {
  readonly names: string[]
  readonly indexOf: Map<string, number>
  /** true where the file lists them; then others are unknown */
  readonly fixed: boolean
  readonly titles: Titles
}

function readTaskOrder(context: Context, root: Located): TaskOrder {
  const at = child(root, 'tasks')
  const names: string[] = []
  const indexOf = new Map<string, number>()
  const titles = createTitles(context, 'tasks')
  for (const listed of at?.items ?? []) {
    const item = child(listed, 'name') ?? listed
    const name = textOf(item)
    if (name === null) continue
    if (indexOf.has(name)) context.report.add(item, say.duplicateName('tasks', name))
    else indexOf.set(name, names.push(name) - 1)
    checkName(context, name, (sentence) => context.report.add(item, sentence))
    titles.read(name, child(listed, 'title'), item)
  }
  return { names, indexOf, fixed: at !== null, titles }
}

function readStation(
  context: Context,
  root: Located,
  entry: Entry,
  zones: readonly ZoneDraft[],
  products: Products,
  tasks: TaskOrder,
  taken: Map<number, string>,
): StationDraft {
  const at = entry.value
  const zone = findZone(context, child(at, 'zone'), zones)
  if (zone !== null && taken.has(zone)) context.report.add(child(at, 'zone')!, say.zoneTaken(zones[zone]!.name, taken.get(zone)!))
  else if (zone !== null) taken.set(zone, entry.key)
  const inStation = new Set<string>()
  const duties = DUTIES.map((duty) => readDuty(context, root, child(at, duty), duty, products, tasks, inStation))
  const [unload, load, work] = duties
  const path = joinPath('stations', entry.key)
  if (at.kind === 'map' && [...at.entries.keys()].every((key) => NO_DUTIES.has(key))) addAtKey(context, entry, say.noDuty(entry.key))
  if (!at.entries.has('name')) context.origins.set(`${path}.name`, 'default')
  const release = readRelease(context, root, at, path)
  const automatic = flag(context, root, at, 'automatic', path)
  const worksInBreaks = flag(context, root, at, 'worksInBreaks', path)
  if (
    worksInBreaks &&
    !automatic &&
    (child(at, 'worksInBreaks') ?? child(child(child(root, 'defaults'), 'station'), 'worksInBreaks')) !== null
  ) {
    context.report.add(
      (child(at, 'worksInBreaks') ?? child(child(child(root, 'defaults'), 'station'), 'worksInBreaks'))!,
      say.breaksNeedAutomatic(),
    )
  }
  const needed = readNeeded(context, root, at, path, automatic)
  const extras = readExtras(context, at, entry.key, path)
  if (zone === null || release === undefined || unload === undefined || load === undefined || work === undefined || extras === undefined)
    return { name: entry.key, at, zone, spec: null }
  const title = textOf(child(at, 'name')) ?? entry.key
  checkLength(context, child(at, 'name'), TITLE_MAX)
  return {
    name: entry.key,
    at,
    zone,
    spec: {
      name: entry.key,
      title,
      zone,
      unload,
      load,
      work,
      releaseSeconds: release,
      operatorsNeeded: needed,
      worksInBreaks,
      ...extras,
    },
  }
}

/** People that each duty needs: none at an automatic station, else one unless said. */
function readNeeded(context: Context, root: Located, at: Located, path: string, automatic: boolean): number {
  const own = child(at, 'operatorsNeeded')
  const shared = child(child(child(root, 'defaults'), 'station'), 'operatorsNeeded')
  if (own !== null && booleanOf(child(at, 'automatic')) === true)
    context.report.add(own, say.onlyOneOf('operatorsNeeded', 'automatic', 'an automatic station needs nobody'))
  if (own === null) context.origins.set(`${path}.operatorsNeeded`, shared === null || automatic ? 'default' : 'defaults.station')
  return automatic ? 0 : (numberOf(own) ?? numberOf(shared) ?? 1)
}

type Extras = Pick<StationSpec, 'accepts' | 'supply' | 'receiver' | 'safetyStop'>

/** What few stations have; undefined where a value in it is wrong. */
function readExtras(context: Context, at: Located, name: string, path: string): Extras | undefined {
  for (const key of ['accepts', 'supply', 'receiver', 'safetyStop'] as const)
    if (child(at, key) === null) context.origins.set(`${path}.${key}`, 'default')
  const [supplyAt, receiverAt, safetyAt] = [child(at, 'supply'), child(at, 'receiver'), child(at, 'safetyStop')]
  const accepts = textOf(child(at, 'accepts'))
  const supply = supplyAt === null ? null : readSupply(context, supplyAt, `supply/${name}`)
  const inside = (from: Located | null, key: 'cycle' | 'reset'): Distribution | null | undefined => {
    const value = child(from, key)
    return from === null ? null : value === null ? undefined : readDistribution(context, value)
  }
  const cycle = inside(receiverAt, 'cycle')
  const chance = safetyAt === null ? null : fraction(context, child(safetyAt, 'chance'), 'one')
  const reset = inside(safetyAt, 'reset')
  if (supply === undefined || cycle === undefined || chance === undefined || reset === undefined) return undefined
  return {
    accepts: accepts === 'rejected' || accepts === 'all' ? accepts : 'good',
    supply,
    receiver: cycle === null ? null : { cycleSeconds: cycle, queue: numberOf(child(receiverAt, 'queue')) ?? 0 },
    safetyStop: chance === null || reset === null ? null : { probability: chance, resetSeconds: reset },
  }
}

function readRelease(context: Context, root: Located, at: Located, path: string): Distribution | undefined {
  const own = child(at, 'release')
  const shared = child(child(child(root, 'defaults'), 'station'), 'release')
  if (own !== null) return readDistribution(context, own)
  context.origins.set(`${path}.release`, shared === null ? 'default' : 'defaults.station')
  return shared === null ? { kind: 'constant', value: 0 } : readDistribution(context, shared)
}

function flag(context: Context, root: Located, at: Located, key: 'automatic' | 'worksInBreaks', path: string): boolean {
  const own = booleanOf(child(at, key))
  const shared = booleanOf(child(child(child(root, 'defaults'), 'station'), key))
  if (own === null) context.origins.set(`${path}.${key}`, shared === null ? 'default' : 'defaults.station')
  return own ?? shared ?? false
}

/** null: no such duty; undefined: a value in it is wrong. */
function readDuty(
  context: Context,
  root: Located,
  at: Located | null,
  duty: string,
  products: Products,
  tasks: TaskOrder,
  inStation: Set<string>,
): TaskSpec[] | null | undefined {
  if (at === null) return null
  if (at.kind !== 'map') return undefined
  if (duty === 'work' && at.entries.size === 0) {
    context.report.add(at, say.workEmpty())
    return undefined
  }
  const specs = entries(at).map((entry) => readTask(context, root, entry, products, tasks, inStation))
  return specs.includes(undefined) ? undefined : (specs as TaskSpec[])
}

function readTask(
  context: Context,
  root: Located,
  entry: Entry,
  products: Products,
  tasks: TaskOrder,
  inStation: Set<string>,
): TaskSpec | undefined {
  const name = entry.key
  checkName(context, name, (sentence) => addAtKey(context, entry, sentence))
  if (inStation.has(name)) addAtKey(context, entry, say.taskTwice(name))
  inStation.add(name)
  let task = tasks.indexOf.get(name) ?? -1
  if (task < 0 && tasks.fixed) addAtKey(context, entry, say.unknownTask(name, near(context, name, tasks.names), tasks.names))
  else if (task < 0) {
    task = tasks.names.push(name) - 1
    tasks.indexOf.set(name, task)
  }
  tasks.titles.read(name, entry.value.kind === 'map' ? child(entry.value, 'title') : null, entry)
  const base = readTimes(context, root, entry.value, products)
  if (base === undefined) return undefined
  const seconds = products.variants.map((variant) => {
    const time = base.times[variant.base] ?? null
    const longerBy = variant.options.map((i) => products.options[i]!).filter((option) => (option.adds.get(name) ?? 0) > 0)
    if (longerBy.length === 0) return time
    const origin = [products.baseNames[variant.base], ...longerBy.map((option) => option.name)].join(' + ')
    context.origins.set(`${joinPath(joinPath(entry.value.path, 'byVariant'), variant.name)}`, origin)
    const extra = longerBy.reduce((sum, option) => sum + option.adds.get(name)!, 0)
    return longer(time, extra, base.cv)
  })
  if (seconds.every((time) => time === null)) {
    context.report.add(entry.value, say.timeForNobody())
    return undefined
  }
  return { task, seconds }
}

/** Options add to tasks that some station has. */
function checkAdds(context: Context, products: Products, tasks: TaskOrder): void {
  for (const option of products.options) {
    for (const entry of entries(child(option.at, 'adds'))) {
      if (!tasks.indexOf.has(entry.key))
        addAtKey(context, entry, say.unknownTask(entry.key, near(context, entry.key, tasks.names), tasks.names))
    }
  }
}
