/** The parts that a stop names: `S6`, `Z05`, `line`, `transfer Z09`, `every station`, a list of these, or `{ station: S6 }`. */
import type { BreakdownPart, SectionSpec } from '@loopwright/line'
import type { Located } from '../../text/located.ts'
import * as say from '../../problems/messages.ts'
import { type Context, entries, fail, near, textOf } from '../context.ts'
import type { StationDraft } from '../work/stations.ts'
import { findZone, type ZoneDraft } from '../layout/zoneDraft.ts'

export interface Part {
  readonly part: BreakdownPart
  readonly name: string
}

export interface Parts {
  readonly zones: readonly ZoneDraft[]
  readonly stations: readonly StationDraft[]
  readonly stationIndex: ReadonlyMap<string, number>
  readonly sections: readonly SectionSpec[]
}

/** A section by name: `line` is the one of a line that names none. */
const sectionOf = (name: string, { sections }: Parts): number => sections.findIndex((section) => section.name === name)

export function readParts(context: Context, at: Located, line: Parts): Part[] | null {
  if (at.kind === 'list') {
    if (at.items.length === 0) context.report.add(at, say.listEmpty())
    return at.items.flatMap((item) => readWord(context, item, line) ?? [])
  }
  if (at.kind === 'map') return readKinds(context, at, line)
  return readWord(context, at, line)
}

function readKinds(context: Context, at: Located, line: Parts): Part[] | null {
  const all = entries(at)
  if (all.length !== 1) {
    context.report.add(at, say.neither(['station', 'zone', 'transfer', 'section', 'line'], 'name one part by its kind'))
    return null
  }
  if (all[0]!.key === 'line') return section(context, all[0]!.value, 'line', line)
  const name = textOf(all[0]!.value)
  return name === null ? null : readOne(context, all[0]!.value, all[0]!.key, name, line)
}

function section(context: Context, at: Located, name: string, line: Parts): Part[] | null {
  const index = sectionOf(name, line)
  if (index >= 0) return [{ part: { kind: 'section', index }, name }]
  const names = line.sections.map((one) => one.name)
  return fail(context, at, say.unknownSection(name, names)) ?? null
}

/** A part by kind and name. */
function readOne(context: Context, at: Located, kind: string, name: string, line: Parts): Part[] | null {
  if (kind === 'station') {
    const index = line.stationIndex.get(name) ?? -1
    if (index >= 0) return [{ part: { kind, index }, name }]
    if (context.report.isFull()) return null
    const names = line.stations.map((station) => station.name)
    context.report.add(at, say.unknownStation(name, near(context, name, names), names))
    return null
  }
  if (kind === 'section') return section(context, at, name, line)
  const index = at.value === name ? findZone(context, at, line.zones) : (context.zoneIndex.get(name) ?? -1)
  if (index === null || line.zones.length === 0) return null
  if (index < 0) {
    if (context.report.isFull()) return null
    const names = line.zones.map((zone) => zone.name)
    context.report.add(at, say.unknownZone(name, near(context, name, names), names))
    return null
  }
  if (kind === 'zone') return [{ part: { kind, index }, name }]
  if (line.zones[index]!.transfer === null) {
    context.report.add(at, say.noTransferThere(name))
    return null
  }
  return [{ part: { kind: 'transfer', index }, name }]
}

/** `S6`, `Z05`, `line`, `transfer Z09`, `every station` … */
function readWord(context: Context, at: Located, line: Parts): Part[] | null {
  const word = textOf(at)
  if (word === null) return null
  if (word.startsWith('every ')) return readEvery(context, at, word, line)
  const zone = context.zoneIndex.get(word) ?? -1
  const station = line.stationIndex.get(word) ?? -1
  const meanings = [
    ...(sectionOf(word, line) >= 0 ? [word === 'line' ? 'line' : `section ${word}`] : []),
    ...(station >= 0 ? [`station ${word}`] : []),
    ...(zone >= 0 ? [`zone ${word}`] : []),
    ...(zone >= 0 && line.zones[zone]!.transfer !== null ? [`transfer ${word}`] : []),
  ]
  if (meanings.length > 1) {
    context.report.add(at, say.partAmbiguous(word, meanings))
    return null
  }
  if (sectionOf(word, line) >= 0) return [{ part: { kind: 'section', index: sectionOf(word, line) }, name: word }]
  if (station >= 0) return [{ part: { kind: 'station', index: station }, name: word }]
  if (zone >= 0) return [{ part: { kind: 'zone', index: zone }, name: word }]
  const prefixed = /^(station|zone|transfer|section)\s+(.+)$/.exec(word)
  if (prefixed !== null) return readOne(context, at, prefixed[1]!, prefixed[2]!, line)
  if (line.zones.length === 0) return null
  if (context.takenOut.has(word)) {
    context.report.add(at, say.zoneTakenOut(word))
    return null
  }
  if (context.report.isFull()) return null
  const known = [
    ...line.stations.map((one) => one.name),
    ...line.zones.map((one) => one.name),
    ...line.sections.map((one) => one.name),
    'every station',
    'every zone',
    'every transfer',
  ]
  context.report.add(at, say.unknownPart(word, near(context, word, known)))
  return null
}

function readEvery(context: Context, at: Located, word: string, line: Parts): Part[] | null {
  const kind = word.slice(6).trim()
  const parts: Part[] = []
  if (kind === 'station') for (const [index, station] of line.stations.entries()) parts.push({ part: { kind, index }, name: station.name })
  else if (kind === 'zone') for (const [index, zone] of line.zones.entries()) parts.push({ part: { kind, index }, name: zone.name })
  else if (kind === 'transfer') {
    for (const [index, zone] of line.zones.entries()) if (zone.transfer !== null) parts.push({ part: { kind, index }, name: zone.name })
  } else {
    context.report.add(at, say.unknownPart(word, near(context, word, ['every station', 'every zone', 'every transfer'])))
    return null
  }
  if (parts.length === 0 && line.zones.length > 0) context.report.add(at, say.nobodyThere(word))
  return parts
}
