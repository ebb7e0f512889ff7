/** Paths: of a loop path i leaves zone i for the next one; others as they are listed. Own values first, then the next zone's, then the drive's. */
import { type PathSpec, type Position, STORE } from '@loopwright/line'
import type { Distribution } from '@loopwright/stats'
import { joinPath, type Located } from '../../text/located.ts'
import * as say from '../../problems/messages.ts'
import { booleanOf, type Context, child, near, quantityOrNone, textOf } from '../context.ts'
import type { FileKey } from '../../schema/fileKeys.ts'
import { readDistribution } from '../work/distribution.ts'
import { findStation } from '../work/operators.ts'
import { findPlace, own, STORE_WORD, type ZoneDraft } from './zoneDraft.ts'

export interface PathDraft {
  /** index of a zone, or STORE */
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
  readonly takesAt: Located | null
  /** `push` or `pull` */
  readonly manualAt: Located | null
}

/** One way in the file. */
interface Step {
  readonly from: number
  readonly to: number
  readonly at: Located | null
}

/** The paths of the line, in the order in which they get their index: those of the loop, then the others as they are written. */
export function readPaths(context: Context, root: Located, zones: readonly ZoneDraft[]): PathDraft[] {
  if (zones.length === 0) return []
  const steps = readSteps(context, root, zones)
  if (steps === null) return []
  const isRing =
    steps.every(({ from, to, at }, k) => from === k && to === (k + 1) % zones.length && !hasOwnWay(at)) && steps.length === zones.length
  const ring = child(root, 'loop') !== null ? zones.filter((zone) => zone.inLoop).length : isRing ? zones.length : 0
  const drafts = steps.map((step, index) => draft(context, root, zones, step, index, index < ring))
  setAcross(context, zones, drafts, ring)
  return drafts
}

/** Conditions or an operator: more than a plain way on. */
const hasOwnWay = (at: Located | null): boolean => (['takes', 'push', 'pull'] as const).some((key) => child(at, key) !== null)

/** null where an end is not known */
function readSteps(context: Context, root: Located, zones: readonly ZoneDraft[]): Step[] | null {
  const list = child(root, 'paths')
  const ring = child(root, 'loop') === null ? (list === null ? zones.length : 0) : zones.filter((zone) => zone.inLoop).length
  const steps: Step[] = Array.from({ length: ring }, (_, from) => ({ from, to: (from + 1) % ring, at: null }))
  let whole = true
  for (const at of list?.items ?? []) {
    const found = at.kind === 'text' ? readChain(context, at, zones) : readStep(context, at, zones, ring)
    if (found === null) whole = false
    for (const step of found ?? []) {
      const isOfRing = step.from >= 0 && step.from < ring && step.to === (step.from + 1) % ring && !hasOwnWay(step.at)
      const before = steps.findIndex(({ from, to, at: other }) => from === step.from && to === step.to && !hasOwnWay(other))
      if (isOfRing && before >= 0 && steps[before]!.at === null) steps[before] = step
      else if (before >= 0 && !hasOwnWay(step.at))
        context.report.add(child(at, 'from') ?? at, say.pathTwice(endName(zones, step.from), endName(zones, step.to)))
      else steps.push(step)
    }
  }
  if (steps.length === 0 && whole) context.report.add(list ?? root, say.pathsMissing())
  return whole ? steps : null
}

function readStep(context: Context, at: Located, zones: readonly ZoneDraft[], ring: number): Step[] | null {
  const from = findPlace(context, child(at, 'from'), zones)
  const toAt = child(at, 'to')
  const to = toAt === null ? null : findPlace(context, toAt, zones)
  if (from === null || (toAt !== null && to === null)) return null
  if (to === from) {
    context.report.add(toAt!, say.pathToItself(endName(zones, from)))
    return null
  }
  if (to !== null) return [{ from, to, at }]
  if (from >= 0 && from < ring) return [{ from, to: (from + 1) % ring, at }]
  if (at.kind === 'map') context.report.add(at, say.missing('to', 'the name of the next zone'))
  return null
}

/** `Z01 > Z02 > store`: one path for each sign. */
function readChain(context: Context, at: Located, zones: readonly ZoneDraft[]): Step[] | null {
  const text = textOf(at)!
  const parts = text.split('>')
  if (parts.length < 2 || parts.some((part) => part.trim() === '')) {
    context.report.add(at, say.badChain(text))
    return null
  }
  let start = 0
  const ends = parts.map((part) => {
    const name = part.trim()
    const place = name === STORE_WORD ? STORE : context.zoneIndex.get(name)
    if (place === undefined && !context.report.isFull()) {
      const names = zones.map((zone) => zone.name)
      context.report.add(at, say.unknownZone(name, near(context, name, names), names), start + part.indexOf(name), name.length)
    }
    start += part.length + 1
    return place
  })
  if (ends.includes(undefined)) return null
  const steps = ends.slice(1).map((to, k) => ({ from: ends[k]!, to: to!, at: null }))
  const same = steps.find(({ from, to }) => from === to)
  if (same !== undefined) context.report.add(at, say.pathToItself(endName(zones, same.from)))
  return same === undefined ? steps : null
}

const endName = (zones: readonly ZoneDraft[], end: number): string => zones[end]?.name ?? STORE_WORD

function draft(context: Context, root: Located, zones: readonly ZoneDraft[], step: Step, index: number, inRing: boolean): PathDraft {
  const { from, to, at } = step
  const next = to === STORE ? null : zones[to]!
  const path = `paths[${index}]`
  const drive = child(root, 'drive')
  const moveAt = child(at, 'move')
  const clearAt = child(at, 'clear')
  const distanceAt = child(at, 'distance')
  if (distanceAt === null)
    context.origins.set(`${path}.distance`, next === null ? 'length of the zones' : `${joinPath('zones', next.name)}.length`)
  const manualAt = child(at, 'push') ?? child(at, 'pull')
  if (child(at, 'push') !== null && child(at, 'pull') !== null)
    context.report.add(child(at, 'pull')!, say.onlyOneOf('pull', 'push', 'a path is pushed or pulled'))
  if (textOf(manualAt) !== null && manualAt !== null && (moveAt === null || textOf(moveAt) === 'derived'))
    context.report.add(manualAt, say.manualNeedsMove(child(at, 'push') === manualAt ? 'push' : 'pull'))
  const move = moveAt === null || textOf(moveAt) === 'derived' ? null : readDistribution(context, moveAt)
  if (moveAt === null) context.origins.set(`${path}.move`, 'default')
  const speed = pick(context, `${path}.speed`, [child(at, 'speed'), ownOf(next, 'speed'), child(drive, 'speed')], 'speed')
  return {
    from,
    to,
    at,
    distance:
      distanceAt === null
        ? next === null
          ? commonLength(zones)
          : next.length
        : quantityOrNone(context, distanceAt, 'length', 'above zero'),
    speed,
    acceleration: pick(
      context,
      `${path}.acceleration`,
      [child(at, 'acceleration'), ownOf(next, 'acceleration'), child(drive, 'acceleration')],
      'acceleration',
    ),
    across: false,
    fromPosition: position(context, child(at, 'fromPosition'), zones[from] ?? null, inRing ? 'high' : 'low', `${path}.fromPosition`),
    toPosition: position(context, child(at, 'toPosition'), next, 'low', `${path}.toPosition`),
    move,
    clear: readClear(context, clearAt, move, speed, path, manualAt !== null),
    takesAt: child(at, 'takes'),
    manualAt,
  }
}

/** A move time alone, with no speed known, is the clear time too (MODEL.md §3). */
function readClear(
  context: Context,
  at: Located | null,
  move: Distribution | null | undefined,
  speed: number | null | undefined,
  path: string,
  byHand: boolean,
): Distribution | 'move' | null | undefined {
  if (at === null) {
    const same = move !== null && move !== undefined && (speed === null || byHand)
    context.origins.set(`${path}.clear`, same ? (byHand ? 'default of a move by hand' : 'default, since no speed is known') : 'default')
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

/** At a transfer of a loop the way in is straight and the way out crosswise, elsewhere all is straight, unless a path says otherwise. */
function position(context: Context, at: Located | null, zone: ZoneDraft | null, usual: Position, path: string): Position {
  const given = textOf(at)
  const hasTransfer = zone !== null && zone.transfer !== null
  if (given === 'high' && !hasTransfer && at !== null) context.report.add(at, say.positionWithoutTransfer(zone?.name ?? STORE_WORD))
  if (at !== null) return given === 'high' ? 'high' : 'low'
  context.origins.set(path, 'default')
  return hasTransfer ? usual : 'low'
}

/**
 * On the loop the carrier starts lengthwise at zone 0; each transfer whose ways in and out need different positions flips `across` for its way out
 * and all paths up to the next such transfer. Other paths are travelled sideways where they need `high` at an end. (MODEL.md §3)
 */
function setAcross(context: Context, zones: readonly ZoneDraft[], drafts: readonly PathDraft[], ring: number): void {
  let across = false
  drafts.forEach((path, index) => {
    if (index < ring) {
      const wayIn = drafts[(index + ring - 1) % ring]!
      if (zones[path.from]!.transfer !== null && wayIn.toPosition !== path.fromPosition) across = !across
    }
    const given = booleanOf(child(path.at, 'across'))
    if (given === null) context.origins.set(`paths[${index}].across`, index < ring ? 'from the turns' : 'from the positions')
    path.across = given ?? (index < ring ? across : path.fromPosition === 'high' || path.toPosition === 'high')
  })
}

/** The length of the zones where they are all of one length; else null. */
function commonLength(zones: readonly ZoneDraft[]): number | null | undefined {
  const first = zones[0]!.length
  return zones.every((zone) => zone.length === first) ? first : null
}

const ownOf = (zone: ZoneDraft | null, key: FileKey): Located | null => (zone === null ? null : own(zone, key))

/** Whom the path takes, and who moves the carrier; what is named wrongly is told and left out. */
export function readWays(
  context: Context,
  path: PathDraft,
  variants: readonly string[],
  stationIndex: ReadonlyMap<string, number>,
): Pick<PathSpec, 'takes' | 'manual'> {
  const { takesAt, manualAt } = path
  const variantsAt = child(takesAt, 'variants')
  const wanted = variantsAt?.items.flatMap((at) => {
    const name = textOf(at)
    if (name === null) return []
    const index = variants.indexOf(name)
    if (index < 0 && variants.length > 0) context.report.add(at, say.unknownVariant(name, near(context, name, variants), variants))
    return index < 0 ? [] : [index]
  })
  const load = textOf(child(takesAt, 'load'))
  const manualStation = findStation(context, manualAt, stationIndex)
  return {
    takes: {
      variants: wanted ?? null,
      load: load === 'empty' || load === 'loaded' ? load : null,
      rejected: booleanOf(child(takesAt, 'rejected')),
      forStation: findStation(context, child(takesAt, 'forStation'), stationIndex),
    },
    manual: manualStation === null ? null : { kind: child(path.at, 'push') === manualAt ? 'push' : 'pull', station: manualStation },
  }
}

/** The finished path; null where a value is wrong. */
export function finishPath(path: PathDraft, ways: Pick<PathSpec, 'takes' | 'manual'>): PathSpec | null {
  if (
    path.distance === undefined ||
    path.speed === undefined ||
    path.acceleration === undefined ||
    path.move === undefined ||
    path.clear === undefined
  )
    return null
  return {
    ...ways,
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
