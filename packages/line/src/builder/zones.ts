/** Zones of a sketch: as listed, put in and taken out, with the drive's values where they have none of their own. */
import { nearest } from '../check/nearest.ts'
import { sentences as say } from '../check/sentences.ts'
import type { MergeSpec, TransferSpec, ZoneSpec } from '../spec.ts'
import type { Report } from './report.ts'
import type { LineSketch, Shape, ZoneSketch } from './sketch.ts'
import { amount, checkNames, type Names, listed, namesOf, refer, referPlace, whole, duration } from './values.ts'

/** more than that is a slip of the pen; a file takes fewer */
export const ZONES_MAX = 100_000

/** A zone with its name and all that is said of it. */
export type NamedZone = ZoneSketch & { readonly name: string }

export interface Zones {
  /** those of the loop or straight line first, then those beside it */
  readonly all: readonly NamedZone[]
  readonly names: Names
  /** how many lie on the loop or straight line */
  readonly onLine: number
}

/** Names that are made count from 1 and have as many digits as the last one, at least two: `Z01`. */
export function zonesOf(report: Report, shape: Shape, sketch: LineSketch): Zones {
  const zones = typeof sketch.zones === 'number' ? Array.from({ length: sketch.zones }, () => ({})) : sketch.zones
  const digits = Math.max(2, String(zones.length).length)
  const named = (zone: string | ZoneSketch, k: number): NamedZone => {
    const own = typeof zone === 'string' ? { name: zone } : zone
    return withOwn(sketch, { ...own, name: own.name ?? `Z${String(k + 1).padStart(digits, '0')}` })
  }
  if (zones.length === 0) report.add('zones', say.noZones())
  const written = zones.map(named)
  const line = changed(report, shape, sketch, written)
  if (zones.length > 0 && line.length === 0) report.add('takeOut', say.noZones())
  const beside = (sketch.beside ?? []).map(named)
  const all = [...line, ...beside]
  const names = all.map(({ name }) => name)
  checkNames(report, 'zones', names, (name) => `zones.${name}`)
  const isAsWritten = line.length === written.length && line.every((zone, k) => zone === written[k])
  const known = namesOf(names, say.unknownZone, isAsWritten ? names : [...written, ...beside].map(({ name }) => name))
  for (const name of Object.keys(sketch.own ?? {})) refer(report, `own.${name}`, name, known)
  return { all, names: known, onLine: line.length }
}

/** Own values by name are the strongest. */
const withOwn = ({ own, zoneLength }: LineSketch, zone: NamedZone): NamedZone => ({
  ...(zoneLength === undefined ? {} : { length: zoneLength }),
  ...zone,
  ...own?.[zone.name],
  name: zone.name,
})

/** A new zone is called after the one that it follows, `Z06a`, `Z06b`; before the first of a straight line there is none, and that one gives its name. */
function changed(report: Report, shape: Shape, sketch: LineSketch, written: readonly NamedZone[]): NamedZone[] {
  const { putIn, takeOut = [] } = sketch
  const zones = [...written]
  const added = new Set<string>()
  if (shape === 'graph' && listed(putIn).length > 0) report.add('putIn', say.putInLoop())
  for (const put of listed(putIn)) {
    const beside = put.before ?? put.after
    if (beside === undefined || (put.before !== undefined && put.after !== undefined)) {
      report.add('putIn', say.neither(['before', 'after'], 'say beside which station or zone they stand'))
      continue
    }
    const station = sketch.stations?.[beside]?.zone
    const wanted = station === undefined ? beside : typeof station === 'number' ? written[station]?.name : station
    const at = zones.findIndex(({ name }) => name === wanted)
    if (at < 0) {
      const known = [...Object.keys(sketch.stations ?? {}), ...zones.map(({ name }) => name)]
      report.add('putIn', say.unknownPlace(beside, nearest(beside, known)))
      continue
    }
    const isFirst = shape === 'straight' && put.before !== undefined && at === 0
    const follows = zones[put.before === undefined || isFirst ? at : (at + zones.length - 1) % zones.length]!
    const stem = added.has(follows.name) ? follows.name.replace(/[a-z]+$/, '') : follows.name
    const count = whole(report, 'putIn.zones', put.zones ?? 1, 1)
    if (zones.length + count > ZONES_MAX) {
      report.add('putIn.zones', say.tooManyZones(String(zones.length + count), ZONES_MAX))
      continue
    }
    const length = put.length ?? zones[at]!.length
    const taken = new Set(zones.map((zone) => zone.name))
    const made: NamedZone[] = []
    for (let k = 0; made.length < count; k++) {
      const name = stem + letters(k)
      if (taken.has(name)) continue
      made.push(withOwn(sketch, { name, ...(length === undefined ? {} : { length }) }))
      added.add(name)
    }
    zones.splice(isFirst ? 0 : zones.indexOf(follows) + 1, 0, ...made)
  }
  for (const name of takeOut) {
    const known = namesOf(
      zones.map((zone) => zone.name),
      say.unknownZone,
    )
    const at = refer(report, 'takeOut', name, known)
    if (at !== null) zones.splice(at, 1)
  }
  return zones
}

/** `a` … `z`, `aa`, `ab` … */
const letters = (k: number): string => (k < 26 ? '' : letters(Math.floor(k / 26) - 1)) + String.fromCharCode(97 + (k % 26))

/** The complete zone. At a transfer the sensor is at the stop point, and the release single, unless it says otherwise itself. */
export function zoneSpec(report: Report, sketch: LineSketch, zone: NamedZone, names: Names): ZoneSpec {
  const path = `zones.${zone.name}`
  const { drive } = sketch
  const transfer = zone.transfer === undefined ? null : transferOf(report, `${path}.transfer`, zone.transfer)
  if (zone.release === 'train' && transfer !== null) report.add(`${path}.release`, say.trainAtTransfer(zone.name))
  const sensor = zone.sensorBeforeStop ?? (transfer === null ? (drive?.sensorBeforeStop ?? 0) : 0)
  return {
    name: zone.name,
    lengthMetres:
      zone.length === undefined
        ? null
        : amount(report, Object.is(zone.length, sketch.zoneLength) ? 'zoneLength' : `${path}.length`, zone.length, 'above zero'),
    sensorBeforeStopMetres: amount(report, `${path}.sensorBeforeStop`, sensor, 'zero'),
    release: zone.release ?? (transfer === null ? (drive?.release ?? 'single') : 'single'),
    transfer,
    divert: zone.divert ?? 'first',
    merge: mergeOf(report, `${path}.merge`, zone.merge ?? 'waiting', names),
  }
}

const transferOf = (report: Report, path: string, of: NonNullable<ZoneSketch['transfer']>): TransferSpec => ({
  liftSeconds: duration(report, `${path}.lift`, of.lift, 'zero'),
  lowerSeconds: duration(report, `${path}.lower`, of.lower, 'zero'),
  enterOnlyIfExitClear: of.enterOnlyIfExitClear ?? false,
})

function mergeOf(report: Report, path: string, merge: NonNullable<ZoneSketch['merge']>, zones: Names): MergeSpec {
  if (typeof merge === 'string') return { kind: merge }
  if (merge.priority.length === 0) report.add(`${path}.priority`, say.listEmpty())
  return { kind: 'priority', from: merge.priority.flatMap((from) => referPlace(report, `${path}.priority`, from, zones) ?? []) }
}
