/** Physical sense: what no single value can show. Errors where the line cannot be built, warnings where it is doubtful. */

import { clearTime, type SectionSpec, STORE } from '@loopwright/line'
import { distributionMean } from '@loopwright/stats'
import type { Located } from '../text/located.ts'
import * as say from '../problems/messages.ts'
import type { CarriersDraft } from './layout/carriers.ts'
import { type Context, child } from './context.ts'
import type { PathDraft } from './layout/paths.ts'
import type { Products } from './work/products.ts'
import type { StationDraft } from './work/stations.ts'
import { frequencies, meanWork } from './stops/stops.ts'
import { isClosedLoop, own, type ZoneDraft } from './layout/zoneDraft.ts'

/** seconds; shorter times are none (MODEL.md §1) */
const CLOCK_STEP = 2 ** -20
/** a move that begins from rest */
const REST = 0
const metres = (value: number): string => `${Number(value.toPrecision(6))} m`
const seconds = (value: number): string => `${Number(value.toPrecision(4))} s`

/** True where the clear time of the path is made from carrier length and speed. */
function clearIsDerived(path: PathDraft, zone: ZoneDraft | null): boolean {
  return zone !== null && path.clear === null && (zone.release === 'single' || zone.transfer !== null)
}

/** Findings that many zones share: one sentence per place, with all its zones. */
function createGroups(context: Context) {
  const groups = new Map<string, { at: Located; zones: string[]; say: (zones: readonly string[]) => say.Sentence }>()
  function add(what: string, at: Located, zone: string, sentence: (zones: readonly string[]) => say.Sentence): void {
    const key = `${what} ${at.path}`
    const group = groups.get(key)
    if (group === undefined) groups.set(key, { at, zones: [zone], say: sentence })
    else group.zones.push(zone)
  }
  function report(): void {
    for (const group of groups.values()) context.report.add(group.at, group.say(group.zones))
  }
  return { add, report }
}

export function checkPaths(
  context: Context,
  root: Located,
  zones: readonly ZoneDraft[],
  paths: readonly PathDraft[],
  carriers: CarriersDraft | null,
): void {
  const groups = createGroups(context)
  const drive = child(root, 'drive')
  for (const path of paths) {
    const zone = zones[path.from] ?? null
    const next = zones[path.to] ?? null
    if (path.move === null && path.distance === null) {
      if (next === null) context.report.add(path.at ?? child(root, 'paths') ?? root, say.storeDistance(zone?.name ?? ''))
      else groups.add('length', path.at ?? next.at, next.name, say.zoneWithoutLength)
    }
    const needsSpeed = path.move === null || clearIsDerived(path, zone)
    const driveIsThere = drive === null || drive.kind === 'map'
    if (needsSpeed && path.speed === null && driveIsThere)
      groups.add('speed', path.at ?? drive ?? zone?.at ?? root, zone?.name ?? 'store', say.speedNeeded)
    if (carriers === null || zone === null) continue
    const which = path.across ? 'width' : 'length'
    const size = path.across ? carriers.width : carriers.length
    if (clearIsDerived(path, zone) && size === null)
      groups.add(which, carriers.at, zone.name, (names) => say.carrierSizeNeeded(which, names))
    if (size === null || size === undefined) continue
    const early = clearIsDerived(path, zone) && zone.sensor !== undefined && zone.sensor >= size
    if (early)
      groups.add('sensor', own(zone, 'sensorBeforeStop') ?? child(drive, 'sensorBeforeStop') ?? zone.at, zone.name, say.sensorTooEarly)
    const room = next?.length ?? null
    if (next === null || room === null || room === undefined || size <= room) continue
    groups.add(`size ${room}`, child(carriers.at, which) ?? carriers.at, next.name, (names) =>
      say.carrierTooLong(which, names, metres(size), metres(room)),
    )
  }
  groups.report()
  const moves = paths.map((path) => (path.move === null || path.move === undefined ? null : distributionMean(path.move)))
  if (paths.length > 0 && moves.every((mean) => mean !== null && mean < CLOCK_STEP))
    context.report.add(child(root, 'paths') ?? root, say.movesTakeNoTime())
}

/** A station that may stop its section must be in one. */
export function checkSafety(
  context: Context,
  zones: readonly ZoneDraft[],
  stations: readonly StationDraft[],
  sections: readonly SectionSpec[],
): void {
  for (const { at, zone } of stations) {
    const stop = child(at, 'safetyStop')
    if (stop !== null && zone !== null && !sections.some((section) => section.zones.includes(zone)))
      context.report.add(stop, say.safetyWithoutSection(zones[zone]!.name))
  }
}

/** Zones that nothing leads to, or out of. */
export function checkWays(context: Context, root: Located, zones: readonly ZoneDraft[], paths: readonly PathDraft[]): void {
  if (paths.length === 0) return
  const at = child(root, 'paths') ?? root
  const ends = new Set(paths.flatMap(({ from, to }) => [from, to]))
  const lost = zones.filter((zone, index) => !zone.inLoop && !ends.has(index))
  for (const zone of lost) context.report.add(zone.at, say.zoneBesideLoop(zone.name))
  if (lost.length > 0) return
  for (const end of ['to', 'from'] as const) {
    const reached = new Set(paths.map((path) => path[end]))
    const lonely = zones.filter((_, zone) => !reached.has(zone)).map((zone) => zone.name)
    if (lonely.length > 0) context.report.add(at, say.zoneWithoutWay(lonely, end === 'to'))
  }
}

/** How many carriers the loop can take, and can start with. */
export function checkCarriers(context: Context, zones: readonly ZoneDraft[], paths: readonly PathDraft[], carriers: CarriersDraft): void {
  const inStore = carriers.start === 'store' || (Array.isArray(carriers.start) && carriers.start.includes(STORE))
  if (inStore && paths.length > 0 && !paths.some(({ from }) => from === STORE))
    context.report.add(carriers.startAt ?? carriers.at, say.storeWithoutWay())
  if (zones.length === 0 || carriers.start === 'store' || zones.some((zone) => zone.transfer === undefined)) return
  const places = zones.filter((zone) => zone.transfer?.enterOnlyIfExitClear !== true).length
  const { count } = carriers
  const isLoop = isClosedLoop(zones, paths)
  if (places === 0) context.report.add(zones[0]!.at, say.allExitClear())
  else if (isLoop && count >= zones.length) context.report.add(carriers.countAt, say.carriersFillLoop(count, zones.length))
  else if (count > places && typeof carriers.start === 'string') context.report.add(carriers.countAt, say.carriersDoNotFit(count, places))
  else if (isLoop && count >= places) context.report.add(carriers.countAt, say.carriersGridlock(count))
}

/** An odd number of turns would leave the carrier sideways; a square one does not show it. */
export function checkCorners(
  context: Context,
  root: Located,
  zones: readonly ZoneDraft[],
  paths: readonly PathDraft[],
  carriers: CarriersDraft | null,
): void {
  if (!isClosedLoop(zones, paths)) return
  const turning = paths.filter(
    (path) => zones[path.from]!.transfer !== null && paths[(path.from + paths.length - 1) % paths.length]!.toPosition !== path.fromPosition,
  )
  const square = carriers !== null && carriers.length === carriers.width
  if (turning.length % 2 === 1 && !square)
    context.report.add(child(root, 'corners') ?? child(root, 'zones') ?? root, say.cornersOdd(turning.length))
}

export function checkWork(
  context: Context,
  root: Located,
  zones: readonly ZoneDraft[],
  paths: readonly PathDraft[],
  stations: readonly StationDraft[],
  carriers: CarriersDraft | null,
  products: Products,
  reaction: number,
): void {
  const at = child(root, 'stations')
  if (at === null || at.kind !== 'map') return
  if (!stations.some((station) => station.at.entries.has('load'))) context.report.add(at, say.noLoad())
  if (!stations.some((station) => station.at.entries.has('unload'))) context.report.add(at, say.noUnload())
  if (products.mix === null || stations.length === 0 || stations.some((station) => station.spec === null)) return
  const weights = frequencies(products)
  const longest = Math.max(...stations.map((station) => meanWork(station.spec!, weights) + distributionMean(station.spec!.releaseSeconds)))
  const clears = paths.map((path) => (zones[path.from] === undefined ? 0 : clearSeconds(path, zones[path.from]!, carriers, reaction)))
  const slowest = clears.indexOf(Math.max(...clears))
  const path = paths[slowest]
  if (path !== undefined && longest > 0 && clears[slowest]! > longest) {
    const zone = zones[path.from]!
    context.report.add(path.at ?? zone.at, say.clearLong(zone.name, seconds(clears[slowest]!), seconds(longest)))
  }
}

/** Mean clear time from rest (MODEL.md §3), with the change back of a transfer; 0 where it is not known. */
function clearSeconds(path: PathDraft, zone: ZoneDraft, carriers: CarriersDraft | null, reaction: number): number {
  if (path.clear === undefined || path.clear === 'move') return path.move ? distributionMean(path.move) : 0
  if (path.clear !== null) return distributionMean(path.clear)
  const size = path.across ? carriers?.width : carriers?.length
  if (!clearIsDerived(path, zone) || !size || !path.speed || zone.sensor === undefined) return 0
  const change = path.fromPosition === 'high' ? (zone.transfer?.lowerSeconds ?? 0) : 0
  return clearTime(size, zone.sensor, path.speed, path.acceleration ?? null, reaction, REST) + change
}
