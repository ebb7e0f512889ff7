/** Physical sense: what no single value can show. Errors where the line cannot be built, warnings where it is doubtful. */
import * as say from '../messages.ts'
import type { Located } from '../source.ts'
import type { CarriersDraft } from './carriers.ts'
import { type Context, child } from './context.ts'
import type { PathDraft } from './paths.ts'
import { frequencies, meanWork } from './stops.ts'
import type { Products } from './products.ts'
import type { StationDraft } from './stations.ts'
import { own, type ZoneDraft } from './zones.ts'
import { distributionMean } from '@loopwright/stats'

const metres = (value: number): string => `${Number(value.toPrecision(6))} m`
const seconds = (value: number): string => `${Number(value.toPrecision(4))} s`

/** True where the clear time of the path is made from carrier length and speed. */
function clearIsDerived(path: PathDraft, zone: ZoneDraft): boolean {
  return path.clear === null && (zone.release === 'single' || zone.transfer !== null)
}

export function checkPaths(
  context: Context,
  root: Located,
  zones: readonly ZoneDraft[],
  paths: readonly PathDraft[],
  carriers: CarriersDraft | null,
): void {
  for (const path of paths) {
    const zone = zones[path.from]!
    const next = zones[path.to]!
    const place = path.at ?? child(root, 'drive') ?? zone.at
    if (path.move === null && path.distance === null) context.report.add(path.at ?? next.at, say.zoneWithoutLength(next.name))
    const needsSpeed = path.move === null || clearIsDerived(path, zone)
    if (needsSpeed && path.speed === null) context.report.add(place, say.speedNeeded(zone.name))
    if (carriers !== null) checkCarrierOnPath(context, zone, next, path, carriers)
  }
}

function checkCarrierOnPath(context: Context, zone: ZoneDraft, next: ZoneDraft, path: PathDraft, carriers: CarriersDraft): void {
  const which = path.across ? 'width' : 'length'
  const size = path.across ? carriers.width : carriers.length
  if (clearIsDerived(path, zone)) {
    if (size === null) context.report.add(carriers.at, say.carrierSizeNeeded(which, zone.name))
    else if (size !== undefined && zone.sensor !== undefined && zone.sensor >= size)
      context.report.add(own(zone, 'sensorBeforeStop') ?? zone.at, say.sensorTooEarly(zone.name))
  }
  if (size !== null && size !== undefined && next.length !== null && next.length !== undefined && size > next.length) {
    context.report.add(child(carriers.at, which) ?? carriers.at, say.carrierTooLong(next.name, metres(size), metres(next.length)))
  }
}

/** How many carriers the loop can take, and can start with. */
export function checkCarriers(context: Context, zones: readonly ZoneDraft[], carriers: CarriersDraft): void {
  if (zones.length === 0 || zones.some((zone) => zone.transfer === undefined)) return
  const places = zones.filter((zone) => zone.transfer?.enterOnlyIfExitClear !== true).length
  const { count } = carriers
  if (places === 0) context.report.add(zones[0]!.at, say.allExitClear())
  else if (count >= zones.length) context.report.add(carriers.countAt, say.carriersFillLoop(count, zones.length))
  else if (count > places && typeof carriers.start === 'string') context.report.add(carriers.countAt, say.carriersDoNotFit(count, places))
  else if (count >= places) context.report.add(carriers.countAt, say.carriersGridlock(count))
}

/** An odd number of turns would leave the carrier sideways; a square one does not show it. */
export function checkCorners(
  context: Context,
  root: Located,
  zones: readonly ZoneDraft[],
  paths: readonly PathDraft[],
  carriers: CarriersDraft | null,
): void {
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
): void {
  const at = child(root, 'stations')
  if (at === null || at.kind !== 'map') return
  if (!stations.some((station) => station.at.entries.has('load'))) context.report.add(at, say.noLoad())
  if (!stations.some((station) => station.at.entries.has('unload'))) context.report.add(at, say.noUnload())
  if (products.mix === null || stations.length === 0 || stations.some((station) => station.spec === null)) return
  const weights = frequencies(products)
  const longest = Math.max(...stations.map((station) => meanWork(station.spec!, weights) + distributionMean(station.spec!.releaseSeconds)))
  const clears = paths.map((path) => clearSeconds(path, zones[path.from]!, carriers))
  const slowest = clears.indexOf(Math.max(...clears))
  const path = paths[slowest]
  if (path !== undefined && clears[slowest]! > longest) {
    context.report.add(path.at ?? zones[slowest]!.at, say.clearLong(zones[slowest]!.name, seconds(clears[slowest]!), seconds(longest)))
  }
}

/** Mean clear time from rest (MODEL.md §3); 0 where it is not known. */
function clearSeconds(path: PathDraft, zone: ZoneDraft, carriers: CarriersDraft | null): number {
  if (path.clear === undefined || path.clear === 'move') return path.move ? distributionMean(path.move) : 0
  if (path.clear !== null) return distributionMean(path.clear)
  const size = path.across ? carriers?.width : carriers?.length
  if (!clearIsDerived(path, zone) || !size || !path.speed || zone.sensor === undefined) return 0
  const travel = size - zone.sensor
  const ramp = path.acceleration ? path.speed / (2 * path.acceleration) : 0
  const needed = path.acceleration ? path.speed ** 2 / (2 * path.acceleration) : 0
  const change = path.fromPosition === 'high' ? (zone.transfer?.lowerSeconds ?? 0) : 0
  return (travel >= needed ? travel / path.speed + ramp : Math.sqrt((2 * travel) / path.acceleration!)) + change
}
