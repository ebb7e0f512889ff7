/**
 * Zones put into a loop and taken out of it, while all others keep their names: stations, corners, stops and random streams stay where they are.
 * A new zone is called after the zone that it follows: `Z06a`, `Z06b`.
 */
import { joinPath, type Located } from '../../text/located.ts'
import * as say from '../../problems/messages.ts'
import { child, childNamed, type Context, entries, listed, near, numberOf, quantityOrNone, textOf } from '../context.ts'
import { ZONES_MAX } from './loop.ts'
import { own, type ZoneDraft } from './zoneDraft.ts'

/** The loop with what `putIn` and `takeOut` say. */
export function changeLoop(context: Context, root: Located, zones: readonly ZoneDraft[]): ZoneDraft[] {
  const [putIn, takeOut] = [child(root, 'putIn'), child(root, 'takeOut')]
  if (putIn === null && takeOut === null) return [...zones]
  if (child(root, 'loop') === null) {
    context.report.add((putIn ?? takeOut)!, say.putInLoop())
    return [...zones]
  }
  const changed = [...zones]
  for (const at of listed(putIn)) put(context, root, at, zones, changed)
  for (const at of takeOut?.items ?? []) take(context, at, changed)
  return changed
}

function put(context: Context, root: Located, at: Located, zones: readonly ZoneDraft[], changed: ZoneDraft[]): void {
  if (at.kind !== 'map') return
  const [before, after] = [child(at, 'before'), child(at, 'after')]
  if ((before === null) === (after === null)) {
    context.report.add(at, say.neither(['before', 'after'], 'say beside which station or zone they stand'))
    return
  }
  const place = (before ?? after)!
  const zone = zoneOf(context, root, place, zones)
  if (zone === null) return
  const lengthAt = child(at, 'length') ?? own(zone, 'length')
  const length = lengthAt === null ? zone.length : quantityOrNone(context, lengthAt, 'length', 'above zero')
  const count = numberOf(child(at, 'zones')) ?? 1
  if (changed.length + count > ZONES_MAX) {
    context.report.add(child(at, 'zones') ?? at, say.tooManyZones(`${changed.length + count}`, ZONES_MAX))
    return
  }
  const beside = changed.indexOf(zone)
  const follows = before === null ? zone : changed[(beside + changed.length - 1) % changed.length]!
  const taken = new Set([...zones, ...changed].map(({ name }) => name))
  const made: ZoneDraft[] = []
  // a zone that was put in goes on counting: after Z06a comes Z06b
  const stem = follows.putIn ? follows.name.replace(/[a-z]+$/, '') : follows.name
  for (let k = 0; made.length < count; k++) {
    const name = stem + letters(k)
    if (taken.has(name)) continue
    const byName = childNamed(child(root, 'zones'), name)
    const sources = byName === null ? [] : [byName]
    made.push({ ...zone, name, at, sources, generated: true, putIn: true, length })
    context.origins.set(joinPath(joinPath('zones', name), 'length'), at.entries.has('length') ? 'putIn' : joinPath('zones', zone.name))
  }
  changed.splice(changed.indexOf(follows) + 1, 0, ...made)
}

/** `a` … `z`, `aa`, `ab` … */
function letters(k: number): string {
  return (k < 26 ? '' : letters(Math.floor(k / 26) - 1)) + String.fromCharCode(97 + (k % 26))
}

/** The zone that a station stands in, or the zone of this name. */
function zoneOf(context: Context, root: Located, at: Located, zones: readonly ZoneDraft[]): ZoneDraft | null {
  const name = textOf(at)
  if (name === null) return null
  const stations = entries(child(root, 'stations'))
  const station = stations.find(({ key }) => key === name)
  const zone = zones.find((each) => each.name === name)
  if (station !== undefined && zone !== undefined) {
    context.report.add(at, say.zoneOrStation(name))
    return null
  }
  if (station !== undefined) return zones.find((each) => each.name === textOf(child(station.value, 'zone'))) ?? null
  if (zone !== undefined) return zone
  const known = [...stations.map(({ key }) => key), ...zones.map((each) => each.name)]
  context.report.add(at, say.unknownPlace(name, near(context, name, known)))
  return null
}

function take(context: Context, at: Located, changed: ZoneDraft[]): void {
  const name = textOf(at)
  if (name === null) return
  const index = changed.findIndex((zone) => zone.name === name)
  const names = changed.map((zone) => zone.name)
  if (index < 0) context.report.add(at, say.unknownZone(name, near(context, name, names), names))
  else if (changed.length === 1) context.report.add(at, say.noZones())
  else {
    changed.splice(index, 1)
    context.takenOut.add(name)
  }
}
