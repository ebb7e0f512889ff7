/** Authoring form to `Scenario`: every step reads what it can, so that all findings of a file show at once. */

import { type LineSpec, PLAIN_LINE } from '@loopwright/line'
import { meanStay } from '@loopwright/line/check'
import { distributionMean } from '@loopwright/stats'
import type { Located } from '../text/located.ts'
import * as say from '../problems/messages.ts'
import type { ScenarioNotes } from '../problems/notes.ts'
import type { Scenario } from '../scenario.ts'
import { readTime } from './time/calendar.ts'
import type { Time } from './time/time.ts'
import { type CarriersDraft, finishCarriers, readCarriers } from './layout/carriers.ts'
import { checkDrafts } from './checks.ts'
import { type Context, checkLength, child, numberOf, QUESTION_MAX, TITLE_MAX, textOf } from './context.ts'
import { checkDoubts } from './doubts.ts'
import { readDrive } from './layout/drive.ts'
import { readOperators, readWalks } from './work/operators.ts'
import { finishPath, type PathDraft, readPaths, readWays } from './layout/paths.ts'
import { readPlan } from './time/plan.ts'
import { type Products, readProducts } from './work/products.ts'
import { readInspections, readRework } from './work/rejects.ts'
import { readSections } from './layout/sections.ts'
import { readStations, type Stations } from './work/stations.ts'
import { frequencies, readStops, type Stops } from './stops/stops.ts'
import { readSupply } from './work/supply.ts'
import type { ZoneDraft } from './layout/zoneDraft.ts'
import { readZones } from './layout/zones.ts'

export interface Resolved {
  readonly scenario: Scenario
  readonly notes: ScenarioNotes
}

interface Parts {
  readonly zones: readonly ZoneDraft[]
  readonly paths: readonly PathDraft[]
  readonly ways: readonly ReturnType<typeof readWays>[]
  readonly carriers: CarriersDraft | null
  readonly products: Products
  readonly stations: Stations
  readonly stops: Stops
  readonly drive: { reaction: number | undefined; stagger: number | undefined }
  readonly time: Time | null
  readonly general: General
}

/** What only some lines have. */
type General = Pick<LineSpec, 'sections' | 'operators' | 'walks' | 'inspections' | 'rework' | 'repairCrews'> & {
  /** undefined where it is wrong */
  readonly supply: LineSpec['supply'] | undefined
}

/** null where the file has errors; they are in the report. */
export function resolve(context: Context, root: Located): Resolved | null {
  for (const key of ['name', 'question'] as const) {
    const at = child(root, key)
    if (at !== null && textOf(at)?.trim() === '') context.report.add(at, say.missing(key, 'a text'))
    checkLength(context, at, key === 'name' ? TITLE_MAX : QUESTION_MAX)
  }
  const time = readTime(context, root)
  const plan = readPlan(context, root, time)
  const drive = readDrive(context, root)
  const zones = readZones(context, root)
  const paths = readPaths(context, root, zones)
  const carriers = readCarriers(context, root, zones)
  const products = readProducts(context, root)
  const stations = readStations(context, root, zones, products)
  const stationIndex = new Map(stations.stations.map(({ name }, index) => [name, index] as const))
  const sections = readSections(context, root, zones)
  const stops = readStops(context, root, zones, stations.stations, products, sections)
  const variants = products.variants.map((variant) => variant.name)
  const ways = paths.map((path) => readWays(context, path, variants, stationIndex))
  const people = { operators: readOperators(context, root, stationIndex), walks: readWalks(context, root, stationIndex) }
  const supplyAt = child(root, 'supply')
  if (supplyAt === null) context.origins.set('supply', 'default')
  const general: General = {
    inspections: readInspections(context, root, stations.tasks, stations.stations),
    rework: readRework(context, root, stations.tasks, stations.stations),
    ...people,
    supply: supplyAt === null ? PLAIN_LINE.supply : readSupply(context, supplyAt, 'supply'),
    repairCrews: numberOf(child(root, 'repairCrews')),
    sections,
  }
  checkDrafts(context, root, {
    zones,
    paths,
    carriers,
    stations: stations.stations,
    sections,
    operators: people.operators,
    products,
    reactionSeconds: drive.reaction ?? 0,
  })
  if (context.report.hasErrors()) return null
  const line = assemble({ zones, paths, ways, carriers, products, stations, stops, drive, time, general })
  if (line === null || time === null || plan === undefined) throw new Error('a scenario without a finding could not be put together')
  checkDoubts(context, root, line, { zones, paths, stations: stations.stations, entries: stops.entries })
  const taktSeconds = plan === null ? null : time.netSeconds / plan.unitsPerWindow
  const scenario: Scenario = {
    name: textOf(child(root, 'name')) ?? '',
    question: textOf(child(root, 'question')) ?? '',
    line,
    plan,
    calendar: time.calendar === null ? null : { ...time.calendar, taktSeconds },
    layout: { turns: zones.map((zone) => zone.turn) },
    titles: { tasks: Object.fromEntries(stations.taskTitles), variants: Object.fromEntries(products.titles) },
    stopEntries: stops.entries,
    variantGroups: products.groups,
  }
  return { scenario, notes: { ...notesOf(root, scenario, zones, products, stops, time, taktSeconds), tables: context.tables } }
}

function assemble(parts: Parts): LineSpec | null {
  const { zones, drive, products, stations, stops, time } = parts
  const carriers = parts.carriers === null ? null : finishCarriers(parts.carriers)
  const paths = parts.paths.map((path, k) => finishPath(path, parts.ways[k]!))
  const { supply } = parts.general
  const specs = stations.stations.map((station) => station.spec)
  if (carriers === null || drive.reaction === undefined || drive.stagger === undefined || products.mix === null || time === null)
    return null
  if (supply === undefined || paths.includes(null) || specs.includes(null) || paths.length === 0) return null
  const zoneSpecs = zones.map((zone) => {
    if (zone.length === undefined || zone.sensor === undefined || zone.transfer === undefined) return null
    return {
      divert: zone.divert,
      merge: zone.merge,
      name: zone.name,
      lengthMetres: zone.length,
      sensorBeforeStopMetres: zone.sensor,
      release: zone.release,
      transfer: zone.transfer,
    }
  })
  if (zoneSpecs.includes(null)) return null
  return {
    ...parts.general,
    supply,
    zones: zoneSpecs as LineSpec['zones'],
    paths: paths as LineSpec['paths'],
    carriers,
    reactionSeconds: drive.reaction,
    staggerSeconds: drive.stagger,
    stations: specs as LineSpec['stations'],
    tasks: stations.tasks,
    variants: products.variants.map((variant) => variant.name),
    mix: products.mix,
    breakdowns: stops.breakdowns,
    breaks: time.breaks,
    conveyorDuringBreaks: time.conveyorDuringBreaks,
    window: time.window,
  }
}

function notesOf(
  root: Located,
  scenario: Scenario,
  zones: readonly ZoneDraft[],
  products: Products,
  stops: Stops,
  time: Time,
  taktSeconds: number | null,
): Omit<ScenarioNotes, 'tables'> {
  const weights = frequencies(products)
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  const transferZoneNames = zones.filter((zone) => zone.transfer?.enterOnlyIfExitClear === true).map((zone) => zone.name)
  return {
    zoneNames: zones.map((zone) => zone.name),
    generatedZoneNames: zones.filter((zone) => zone.generated).map((zone) => zone.name),
    transferZoneNames,
    storageZones: zones.length - transferZoneNames.length,
    options: products.options.map((option) => option.name),
    variants: products.variants.map((variant, i) => ({
      name: variant.name,
      variant: products.baseNames[variant.base]!,
      options: variant.options.map((option) => products.options[option]!.name),
      share: weights[i]! / total,
    })),
    stations: scenario.line.stations.map((station) => ({
      name: station.name,
      title: station.title,
      zone: zones[station.zone]!.name,
      meanWorkSeconds: meanStay(station, weights),
      meanReleaseSeconds: distributionMean(station.releaseSeconds),
    })),
    shortStops: stops.shortStops,
    breaks: time.breaks,
    warmupSeconds: time.window.warmupSeconds,
    windowSeconds: time.window.endSeconds - time.window.warmupSeconds,
    netSeconds: time.netSeconds,
    shiftStarts: time.shiftStarts,
    shiftsPerDay: time.shiftsPerDay,
    taktSeconds,
    variations: [...(child(root, 'variations')?.entries.keys() ?? [])],
  }
}
