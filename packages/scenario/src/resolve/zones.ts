/** Zones: from a phrase, from a list of groups and zones, or by name; then own values by name, then corners. */
import type { TransferSpec } from '@loopwright/line'
import * as say from '../messages.ts'
import { nearest } from '../nearest.ts'
import { parseQuantity } from '../quantity.ts'
import { joinPath, type Located } from '../source.ts'
import { addAtKey, booleanOf, type Context, checkName, child, entries, quantity, quantityOrNone, textOf } from './context.ts'

/** A zone while it is being put together. `undefined` marks a value that is wrong in the file; its finding is in the report. */
export interface ZoneDraft {
  readonly name: string
  readonly generated: boolean
  /** where it stands in the file */
  readonly at: Located
  /** places that may hold own values, the strongest first */
  readonly sources: readonly Located[]
  length: number | null | undefined
  sensor: number | undefined
  release: 'single' | 'train'
  turn: 'left' | 'right' | null
  transfer: TransferSpec | null | undefined
}

const ZONES_MAX = 5000
const PHRASE = /^\s*(\d+)\s*(?:zones?\s+of|×|x|\*)\s*(.*)$/i

interface Unnamed {
  readonly name: string | null
  readonly at: Located
  readonly own: Located | null
  readonly length: number | null | undefined
}

export function readZones(context: Context, root: Located): ZoneDraft[] {
  const loop = child(root, 'loop')
  const zones = child(root, 'zones')
  const unnamed =
    loop !== null ? readLoop(context, loop) : entries(zones).map((entry) => ({ name: entry.key, at: entry.value, own: null, length: null }))
  if (unnamed === null) return []
  if (unnamed.length === 0) {
    context.report.add(loop ?? zones ?? root, say.noZones())
    return []
  }
  if (unnamed.length > ZONES_MAX) {
    context.report.add(loop ?? zones ?? root, say.tooManyZones(String(unnamed.length), ZONES_MAX))
    return []
  }
  const drafts = unnamed.map((zone, i) => draft(context, root, zone, i, unnamed.length, loop !== null))
  checkNames(context, root, drafts, loop !== null)
  readCorners(context, root, drafts)
  for (const zone of drafts) finish(context, root, zone)
  return drafts
}

function readLoop(context: Context, loop: Located): Unnamed[] | null {
  if (loop.kind === 'text') return group(context, loop)
  if (loop.kind !== 'list') return null
  const zones: Unnamed[] = []
  let whole = true
  for (const item of loop.items) {
    if (item.kind === 'map') zones.push({ name: textOf(child(item, 'name')), at: item, own: item, length: null })
    else {
      const made = group(context, item)
      if (made === null) whole = false
      else zones.push(...made)
    }
  }
  return whole ? zones : null
}

/** `22 zones of 1.5 m` or `6 × 1.5 m`. */
function group(context: Context, at: Located): Unnamed[] | null {
  const text = textOf(at)
  const match = text === null ? null : PHRASE.exec(text)
  if (text === null) return null
  if (match === null) {
    context.report.add(at, say.badLoop(text))
    return null
  }
  const count = Number(match[1])
  if (count > ZONES_MAX) {
    context.report.add(at, say.tooManyZones(match[1]!, ZONES_MAX))
    return null
  }
  const rest = match[2]!
  const outcome = parseQuantity(rest, 'length')
  const start = text.length - rest.length
  if (outcome.fault !== null) context.report.add(at, outcome.fault.sentence, start + outcome.fault.start, outcome.fault.length)
  else if (outcome.value === 0) context.report.add(at, say.zero(rest), start, rest.length)
  const length = outcome.value === null || outcome.value === 0 ? undefined : outcome.value
  return Array.from({ length: count }, () => ({ name: null, at, own: null, length }))
}

/** Names that are made count from 1 and have as many digits as the last one, at least two: `Z01`. */
function draft(context: Context, root: Located, zone: Unnamed, index: number, total: number, inLoop: boolean): ZoneDraft {
  const digits = Math.max(2, String(total).length)
  const name = zone.name ?? `Z${String(index + 1).padStart(digits, '0')}`
  const byName = child(child(root, 'zones'), name)
  const sources = [byName, zone.own].filter((at) => at !== null)
  if (zone.length !== null && zone.length !== undefined) context.origins.set(joinPath(joinPath('zones', name), 'length'), 'loop')
  return {
    name,
    generated: zone.name === null && inLoop,
    at: zone.at,
    sources,
    length: zone.length,
    sensor: undefined,
    release: 'single',
    turn: null,
    transfer: null,
  }
}

function checkNames(context: Context, root: Located, drafts: readonly ZoneDraft[], inLoop: boolean): void {
  const seen = new Set<string>()
  for (const zone of drafts) {
    if (seen.has(zone.name)) context.report.add(child(zone.at, 'name') ?? zone.at, say.duplicateName('zones', zone.name))
    else if (!zone.generated) {
      const entry = inLoop ? null : child(root, 'zones')?.entries.get(zone.name)
      checkName(context, zone.name, (sentence) =>
        entry ? addAtKey(context, entry, sentence) : context.report.add(child(zone.at, 'name') ?? zone.at, sentence),
      )
    }
    seen.add(zone.name)
  }
  if (!inLoop) return
  for (const entry of entries(child(root, 'zones'))) {
    if (!seen.has(entry.key)) addAtKey(context, entry, say.unknownZone(entry.key, nearest(entry.key, seen), [...seen]))
  }
}

/** Looks a zone up by name; a finding where there is none. */
export function findZone(context: Context, at: Located | null, drafts: readonly ZoneDraft[]): number | null {
  const name = textOf(at)
  if (at === null || name === null || drafts.length === 0) return null
  const index = drafts.findIndex((zone) => zone.name === name)
  if (index >= 0) return index
  const names = drafts.map((zone) => zone.name)
  context.report.add(at, say.unknownZone(name, nearest(name, names), names))
  return null
}

function readCorners(context: Context, root: Located, drafts: readonly ZoneDraft[]): void {
  const corners = child(root, 'corners')
  const groups = corners === null ? [] : corners.kind === 'list' ? corners.items : [corners]
  const cornered = new Set<number>()
  for (const group of groups) {
    const transfer = readTransfer(context, group)
    const sensorAt = child(group, 'sensorBeforeStop')
    const sensor = sensorAt === null ? 0 : quantity(context, sensorAt, 'length', 'zero')
    const turn = readTurn(child(group, 'turn'))
    for (const at of child(group, 'zones')?.items ?? []) {
      const index = findZone(context, at, drafts)
      if (index === null) continue
      if (cornered.has(index)) {
        context.report.add(at, say.transferTwice(drafts[index]!.name))
        continue
      }
      cornered.add(index)
      const zone = drafts[index]!
      zone.transfer = transfer
      zone.sensor = sensor
      zone.turn = turn
      const path = joinPath('zones', zone.name)
      const defaulted = (key: string): string => (group.entries.has(key) ? 'corners' : 'default')
      for (const key of ['lift', 'lower']) context.origins.set(`${path}.transfer.${key}`, 'corners')
      context.origins.set(`${path}.transfer.enterOnlyIfExitClear`, defaulted('enterOnlyIfExitClear'))
      context.origins.set(`${path}.sensorBeforeStop`, sensorAt === null ? 'default of a transfer' : 'corners')
      context.origins.set(`${path}.turn`, 'corners')
    }
  }
}

function readTransfer(context: Context, at: Located): TransferSpec | undefined {
  const liftSeconds = quantity(context, child(at, 'lift'), 'duration', 'zero')
  const lowerSeconds = quantity(context, child(at, 'lower'), 'duration', 'zero')
  if (liftSeconds === undefined || lowerSeconds === undefined) return undefined
  return { liftSeconds, lowerSeconds, enterOnlyIfExitClear: booleanOf(child(at, 'enterOnlyIfExitClear')) ?? false }
}

function readTurn(at: Located | null): 'left' | 'right' | null {
  const turn = textOf(at)
  return turn === 'left' || turn === 'right' ? turn : null
}

/** Own value of a zone: the first of its places that has the key. */
export function own(zone: ZoneDraft, key: string): Located | null {
  for (const source of zone.sources) {
    const at = child(source, key)
    if (at !== null) return at
  }
  return null
}

/** Own values, then what the drive says, then the defaults. */
function finish(context: Context, root: Located, zone: ZoneDraft): void {
  const path = joinPath('zones', zone.name)
  const drive = child(root, 'drive')
  const given = (key: string): Located | null => own(zone, key)
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
