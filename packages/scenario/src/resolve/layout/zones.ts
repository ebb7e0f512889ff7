/** Zones: from a phrase, from a list of groups and zones, or by name; then own values by name, then corners. */

import { joinPath, type Located } from '../../text/located.ts'
import * as say from '../../problems/messages.ts'
import { addAtKey, type Context, checkName, child, childNamed, entries, near, quantity, quantityOrNone, textOf } from '../context.ts'
import type { FileKey } from '../../schema/fileKeys.ts'
import { readCorners, readTransfer, readTurn } from './corners.ts'
import { readLoop, type Unnamed, ZONES_MAX } from './loop.ts'
import { changeLoop } from './putIn.ts'
import { findPlace, own, type ZoneDraft } from './zoneDraft.ts'

export function readZones(context: Context, root: Located): ZoneDraft[] {
  const loop = child(root, 'loop')
  const zones = child(root, 'zones')
  const unnamed =
    loop !== null ? readLoop(context, loop) : entries(zones).map((entry) => ({ name: entry.key, at: entry.value, own: null, length: null }))
  if (unnamed === null) {
    readCorners(context, root, [])
    return []
  }
  if (unnamed.length === 0) {
    context.report.add(loop ?? zones ?? root, say.noZones())
    return []
  }
  if (unnamed.length > ZONES_MAX) {
    context.report.add(loop ?? zones ?? root, say.tooManyZones(`more than ${ZONES_MAX}`, ZONES_MAX))
    return []
  }
  const asWritten = unnamed.map((zone, i) => draft(context, root, zone, i, unnamed.length, loop !== null))
  const looped = changeLoop(context, root, asWritten)
  checkOwnWays(context, root, asWritten, looped)
  const drafts = loop === null ? looped : [...looped, ...besideLoop(context, root, looped)]
  checkNames(context, root, drafts, loop !== null)
  for (const [index, zone] of drafts.entries()) if (!context.zoneIndex.has(zone.name)) context.zoneIndex.set(zone.name, index)
  readCorners(context, root, drafts)
  for (const zone of drafts) finish(context, root, zone)
  for (const zone of drafts) finishMerge(context, zone, drafts)
  return drafts
}

/** A path with both ends that leads on in the loop as it is written, but past zones that were put in. */
function checkOwnWays(context: Context, root: Located, asWritten: readonly ZoneDraft[], looped: readonly ZoneDraft[]): void {
  if (asWritten.length === looped.length && looped.every((zone) => !zone.putIn)) return
  const next = (zones: readonly ZoneDraft[], name: string): string | null => {
    const index = zones.findIndex((zone) => zone.name === name)
    return index < 0 ? null : zones[(index + 1) % zones.length]!.name
  }
  for (const at of child(root, 'paths')?.items ?? []) {
    const [from, to] = [textOf(child(at, 'from')), textOf(child(at, 'to'))]
    if (from === null || to === null || next(asWritten, from) !== to || context.takenOut.has(from) || context.takenOut.has(to)) continue
    if (next(looped, from) !== to) context.report.add(at, say.putInPath(from, to))
  }
}

/** Zones beside a loop: those named under `zones` that the loop does not have and that say how long they are. */
function besideLoop(context: Context, root: Located, looped: readonly ZoneDraft[]): ZoneDraft[] {
  const known = new Set(looped.map((zone) => zone.name))
  return entries(child(root, 'zones'))
    .filter(({ key, value }) => !known.has(key) && !context.takenOut.has(key) && child(value, 'length') !== null)
    .map(({ key, value }) => ({ ...draft(context, root, { name: key, at: value, own: null, length: null }, 0, 1, true), inLoop: false }))
}

/** Names that are made count from 1 and have as many digits as the last one, at least two: `Z01`. */
function draft(context: Context, root: Located, zone: Unnamed, index: number, total: number, inLoop: boolean): ZoneDraft {
  const digits = Math.max(2, String(total).length)
  const name = zone.name ?? `Z${String(index + 1).padStart(digits, '0')}`
  const byName = childNamed(child(root, 'zones'), name)
  const sources = [byName, zone.own].filter((at) => at !== null)
  if (zone.length !== null && zone.length !== undefined) context.origins.set(joinPath(joinPath('zones', name), 'length'), 'loop')
  return {
    name,
    generated: zone.name === null && inLoop,
    inLoop: true,
    putIn: false,
    at: zone.at,
    sources,
    length: zone.length,
    sensor: undefined,
    release: 'single',
    turn: null,
    transfer: null,
    divert: 'first',
    merge: { kind: 'waiting' },
  }
}

function checkNames(context: Context, root: Located, drafts: readonly ZoneDraft[], inLoop: boolean): void {
  const seen = new Set<string>()
  for (const zone of drafts) {
    if (seen.has(zone.name)) context.report.add(child(zone.at, 'name') ?? zone.at, say.duplicateName('zones', zone.name))
    else if (!zone.generated) {
      const entry = inLoop && zone.inLoop ? null : child(root, 'zones')?.entries.get(zone.name)
      checkName(context, zone.name, (sentence) =>
        entry ? addAtKey(context, entry, sentence) : context.report.add(child(zone.at, 'name') ?? zone.at, sentence),
      )
    }
    seen.add(zone.name)
  }
  if (!inLoop) return
  for (const entry of entries(child(root, 'zones'))) {
    if (!seen.has(entry.key) && !context.takenOut.has(entry.key))
      addAtKey(context, entry, say.unknownZone(entry.key, near(context, entry.key, seen), [...seen]))
  }
}

/** Right of way, which names other zones. */
function finishMerge(context: Context, zone: ZoneDraft, drafts: readonly ZoneDraft[]): void {
  const at = own(zone, 'merge')
  if (at === null) {
    context.origins.set(`${joinPath('zones', zone.name)}.merge`, 'default')
    return
  }
  if (textOf(at) === 'alternate') zone.merge = { kind: 'alternate' }
  const list = child(at, 'priority')
  if (list !== null) zone.merge = { kind: 'priority', from: list.items.flatMap((item) => findPlace(context, item, drafts) ?? []) }
}

/** Own values, then what the drive says, then the defaults. */
function finish(context: Context, root: Located, zone: ZoneDraft): void {
  const path = joinPath('zones', zone.name)
  const drive = child(root, 'drive')
  const given = (key: FileKey): Located | null => own(zone, key)
  const lengthAt = given('length')
  if (lengthAt !== null) {
    zone.length = quantityOrNone(context, lengthAt, 'length', 'above zero')
    context.origins.delete(`${path}.length`)
    noteOrigin(context, zone, lengthAt, `${path}.length`)
  }
  const transferAt = given('transfer')
  if (transferAt === null && zone.transfer === null) context.origins.set(`${path}.transfer`, 'default')
  if (transferAt !== null) {
    if (zone.transfer !== null) context.report.add(transferAt, say.transferTwice(zone.name))
    zone.transfer = textOf(transferAt) === 'none' ? null : transferAt.kind === 'map' ? readTransfer(context, transferAt) : undefined
    if (zone.transfer)
      context.origins.set(`${path}.transfer.enterOnlyIfExitClear`, transferAt.entries.has('enterOnlyIfExitClear') ? '' : 'default')
  }
  const turnAt = given('turn')
  if (turnAt !== null) {
    zone.turn = readTurn(turnAt)
    context.origins.delete(`${path}.turn`)
  }
  if (turnAt === null && zone.turn === null) context.origins.set(`${path}.turn`, 'default')
  const divert = textOf(given('divert'))
  if (divert === null) context.origins.set(`${path}.divert`, 'default')
  else zone.divert = divert === 'alternate' || divert === 'free' ? divert : 'first'
  finishSensor(context, drive, zone, path)
  finishRelease(context, drive, zone, path)
}

function finishSensor(context: Context, drive: Located | null, zone: ZoneDraft, path: string): void {
  const at = own(zone, 'sensorBeforeStop')
  const line = child(drive, 'sensorBeforeStop')
  if (at !== null) {
    zone.sensor = quantity(context, at, 'length', 'zero')
    context.origins.delete(`${path}.sensorBeforeStop`)
  } else if (zone.transfer !== null) {
    if (zone.sensor === undefined && !context.origins.has(`${path}.sensorBeforeStop`)) {
      zone.sensor = 0
      context.origins.set(`${path}.sensorBeforeStop`, 'default of a transfer')
    }
  } else {
    zone.sensor = line === null ? 0 : quantity(context, line, 'length', 'zero')
    context.origins.set(`${path}.sensorBeforeStop`, line === null ? 'default' : 'drive')
  }
}

function finishRelease(context: Context, drive: Located | null, zone: ZoneDraft, path: string): void {
  const at = own(zone, 'release')
  const line = textOf(child(drive, 'release'))
  if (at !== null) {
    zone.release = textOf(at) === 'train' ? 'train' : 'single'
    if (zone.release === 'train' && zone.transfer !== null) context.report.add(at, say.trainAtTransfer(zone.name))
  } else if (zone.transfer !== null) {
    zone.release = 'single'
    context.origins.set(`${path}.release`, 'always so at a transfer')
  } else {
    zone.release = line === 'train' ? 'train' : 'single'
    context.origins.set(`${path}.release`, line === null ? 'default' : 'drive')
  }
}

/** Own values that stand in the list under `loop` come from there. */
function noteOrigin(context: Context, zone: ZoneDraft, at: Located, path: string): void {
  if (zone.sources.length > 0 && at.path.startsWith('loop')) context.origins.set(path, 'loop')
}
