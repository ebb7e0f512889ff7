/** Paths of one closed loop: path i leaves zone i for the next one. Own values first, then the next zone's, then the drive's. */
import { PLAIN_PATH, type PathSpec, type Position } from '@loopwright/line'
import type { Distribution } from '@loopwright/stats'
import * as say from '../messages.ts'
import { joinPath, type Located } from '../located.ts'
import { booleanOf, type Context, child, quantityOrNone, textOf } from './context.ts'
import { readDistribution } from './distribution.ts'
import { findZone, own, type ZoneDraft } from './zoneDraft.ts'

export interface PathDraft {
  readonly from: number
  readonly to: number
  /** where its own values stand; null if nowhere */
  readonly at: Located | null
  distance: number | null | undefined
  speed: number | null | undefined
  acceleration: number | null | undefined
  across: boolean
  fromPosition: Position
  toPosition: Position
  move: Distribution | null | undefined
  clear: Distribution | 'move' | null | undefined
}

export function readPaths(context: Context, root: Located, zones: readonly ZoneDraft[]): PathDraft[] {
  if (zones.length === 0) return []
  const places = placePaths(context, root, zones)
  if (places === null) return []
  const drafts = zones.map((_, from) => draft(context, root, zones, from, places[from] ?? null))
  setAcross(context, zones, drafts)
  return drafts
}

/** Where the own values of each path stand, by the zone it leaves; null if the paths are not the one closed loop. */
function placePaths(context: Context, root: Located, zones: readonly ZoneDraft[]): (Located | null)[] | null {
  const places: (Located | null)[] = zones.map(() => null)
  const list = child(root, 'paths')
  let closed = true
  for (const at of list?.items ?? []) {
    const from = findZone(context, child(at, 'from'), zones)
    const toAt = child(at, 'to')
    const to = toAt === null ? null : findZone(context, toAt, zones)
    if (from === null || (toAt !== null && to === null)) {
      closed = false
      continue
    }
    if (toAt === null && child(root, 'loop') === null) context.report.add(at, say.missing('to', 'the name of the next zone'))
    const next = (from + 1) % zones.length
    const names = `from "${zones[from]!.name}" to "${to === null ? '' : zones[to]!.name}"`
    if (to !== null && to !== next && places[from] !== null) context.report.add(toAt ?? at, say.notYet(`diverts (a second way ${names})`))
    else if (to !== null && to !== next)
      context.report.add(toAt ?? at, say.notYet(`paths that do not make one closed loop in the order of the zones (here ${names})`))
    else if (places[from] !== null) context.report.add(child(at, 'from') ?? at, say.pathTwice(zones[from]!.name))
    else places[from] = at
  }
  if (child(root, 'loop') === null && list !== null && closed && !context.report.hasErrors()) {
    places.forEach((at, from) => {
      if (at === null) context.report.add(list, say.pathMissing(zones[from]!.name, zones[(from + 1) % zones.length]!.name))
    })
  }
  return places
}

function draft(context: Context, root: Located, zones: readonly ZoneDraft[], from: number, at: Located | null): PathDraft {
  const to = (from + 1) % zones.length
  const next = zones[to]!
  const path = `paths[${from}]`
  const drive = child(root, 'drive')
  const moveAt = child(at, 'move')
  const clearAt = child(at, 'clear')
  const distanceAt = child(at, 'distance')
  if (distanceAt === null) context.origins.set(`${path}.distance`, `${joinPath('zones', next.name)}.length`)
  const move = moveAt === null || textOf(moveAt) === 'derived' ? null : readDistribution(context, moveAt)
  if (moveAt === null) context.origins.set(`${path}.move`, 'default')
  const speed = pick(context, `${path}.speed`, [child(at, 'speed'), own(next, 'speed'), child(drive, 'speed')], 'speed')
  return {
    from,
    to,
    at,
    distance: distanceAt === null ? next.length : quantityOrNone(context, distanceAt, 'length', 'above zero'),
    speed,
    acceleration: pick(
      context,
      `${path}.acceleration`,
      [child(at, 'acceleration'), own(next, 'acceleration'), child(drive, 'acceleration')],
      'acceleration',
    ),
    across: false,
    fromPosition: position(context, child(at, 'fromPosition'), zones[from]!, 'high', `${path}.fromPosition`),
    toPosition: position(context, child(at, 'toPosition'), next, 'low', `${path}.toPosition`),
    move,
    clear: readClear(context, clearAt, move, speed, path),
  }
}

/** A move time alone, with no speed known, is the clear time too (MODEL.md §3). */
function readClear(
  context: Context,
  at: Located | null,
  move: Distribution | null | undefined,
  speed: number | null | undefined,
  path: string,
): Distribution | 'move' | null | undefined {
  if (at === null) {
    const same = move !== null && move !== undefined && speed === null
    context.origins.set(`${path}.clear`, same ? 'default, since no speed is known' : 'default')
    return same ? 'move' : null
  }
  const word = textOf(at)
  if (word === 'derived') return null
  if (word !== 'move') return readDistribution(context, at)
  if (move === null) context.report.add(at, say.clearMoveWithoutMove())
  return 'move'
}

/** The first place that has a value; null ("none") where there is none. */
function pick(
  context: Context,
  path: string,
  places: readonly (Located | null)[],
  dimension: 'speed' | 'acceleration',
): number | null | undefined {
  const at = places.find((place) => place !== null) ?? null
  if (at === null) {
    context.origins.set(path, 'default')
    return null
  }
  if (at !== places[0]) context.origins.set(path, at.path)
  return quantityOrNone(context, at, dimension, 'above zero')
}

/** At a transfer the way in is straight and the way out crosswise, unless a path says otherwise. */
function position(context: Context, at: Located | null, zone: ZoneDraft, usual: Position, path: string): Position {
  const given = textOf(at)
  if (given === 'high' && zone.transfer === null && at !== null) context.report.add(at, say.positionWithoutTransfer(zone.name))
  if (at !== null) return given === 'high' ? 'high' : 'low'
  context.origins.set(path, 'default')
  return zone.transfer === null ? 'low' : usual
}

/**
 * The carrier starts lengthwise at zone 0; each transfer whose ways in and out need different positions flips `across`
 * for its way out and all paths up to the next such transfer (MODEL.md §3).
 */
function setAcross(context: Context, zones: readonly ZoneDraft[], drafts: readonly PathDraft[]): void {
  let across = false
  drafts.forEach((path, from) => {
    const wayIn = drafts[(from + drafts.length - 1) % drafts.length]!
    if (zones[from]!.transfer !== null && wayIn.toPosition !== path.fromPosition) across = !across
    const given = booleanOf(child(path.at, 'across'))
    if (given === null) context.origins.set(`paths[${from}].across`, 'from the turns')
    path.across = given ?? across
  })
}

/** The finished path; null where a value is wrong. */
export function finishPath(path: PathDraft): PathSpec | null {
  if (
    path.distance === undefined ||
    path.speed === undefined ||
    path.acceleration === undefined ||
    path.move === undefined ||
    path.clear === undefined
  )
    return null
  return {
    ...PLAIN_PATH,
    from: path.from,
    to: path.to,
    distanceMetres: path.distance,
    speedMetresPerSecond: path.speed,
    accelerationMetresPerSecondSquared: path.acceleration,
    across: path.across,
    fromPosition: path.fromPosition,
    toPosition: path.toPosition,
    moveSeconds: path.move,
    clearSeconds: path.clear,
  }
}
