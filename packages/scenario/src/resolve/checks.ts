/** Physical sense: what no single value can show. The rules are those of every line; here stands where in the file their findings belong. */

import type { OperatorSpec, SectionSpec } from '@loopwright/line'
import { checkParts, type DraftLine, longestStay, type Place, tellTogether } from '@loopwright/line/check'
import * as say from '../problems/messages.ts'
import type { Located } from '../text/located.ts'
import { type Context, child, childNamed } from './context.ts'
import type { FileKey } from '../schema/fileKeys.ts'
import type { CarriersDraft } from './layout/carriers.ts'
import type { PathDraft } from './layout/paths.ts'
import { own, type ZoneDraft } from './layout/zoneDraft.ts'
import { frequencies } from './stops/stops.ts'
import type { Products } from './work/products.ts'
import type { StationDraft } from './work/stations.ts'

export interface Drafts {
  readonly zones: readonly ZoneDraft[]
  readonly paths: readonly PathDraft[]
  readonly carriers: CarriersDraft | null
  readonly stations: readonly StationDraft[]
  readonly sections: readonly SectionSpec[]
  readonly operators: readonly OperatorSpec[]
  readonly products: Products
  readonly reactionSeconds: number
}

export function checkDrafts(context: Context, root: Located, drafts: Drafts): void {
  const lost = zonesBeside(drafts)
  for (const zone of lost) context.report.add(zone.at, say.zoneBesideLoop(zone.name))
  const where = placesOf(root, drafts, lost.length > 0)
  const findings = checkParts(draftOf(drafts), knownStay(drafts))
  const told = tellTogether(findings, (place) => {
    const at = where(place)
    return at === null ? null : { at, key: at.path }
  })
  for (const { at, sentence } of told) context.report.add(at, sentence)
}

/** Zones beside the loop that no path touches. */
function zonesBeside({ zones, paths }: Drafts): ZoneDraft[] {
  const ends = new Set(paths.flatMap(({ from, to }) => [from, to]))
  return paths.length === 0 ? [] : zones.filter((zone, index) => !zone.inLoop && !ends.has(index))
}

function draftOf({ zones, paths, carriers, stations, sections, operators, reactionSeconds }: Drafts): DraftLine {
  return {
    zones: zones.map(({ name, release, length, sensor, transfer }) => ({
      name,
      release,
      lengthMetres: length,
      sensorBeforeStopMetres: sensor,
      transfer,
    })),
    paths: paths.map(({ from, to, across, fromPosition, toPosition, distance, speed, acceleration, move, clear }) => ({
      from,
      to,
      across,
      fromPosition,
      toPosition,
      distanceMetres: distance,
      speedMetresPerSecond: speed,
      accelerationMetresPerSecondSquared: acceleration,
      moveSeconds: move,
      clearSeconds: clear,
    })),
    carriers:
      carriers === null
        ? null
        : { count: carriers.count, lengthMetres: carriers.length, widthMetres: carriers.width, start: carriers.start },
    stations: stations.map(({ name, at, zone, spec }) => ({
      name,
      zone,
      load: child(at, 'load') ?? (at.entries.has('load') ? at : null),
      unload: child(at, 'unload') ?? (at.entries.has('unload') ? at : null),
      safetyStop: child(at, 'safetyStop'),
      operatorsNeeded: spec?.operatorsNeeded,
    })),
    sections,
    operators,
    reactionSeconds,
  }
}

/** null where a station or the mix is not known. */
function knownStay({ stations, products }: Drafts): number | null {
  const specs = stations.flatMap(({ spec }) => spec ?? [])
  if (products.mix === null || specs.length < stations.length) return null
  return longestStay(specs, frequencies(products))
}

/** Where a finding belongs in the file; null where nothing is to be said, since the place itself is missing or wrong. */
function placesOf(root: Located, { zones, paths, carriers, stations }: Drafts, hasLost: boolean): (place: Place) => Located | null {
  const [drive, list, work] = [child(root, 'drive'), child(root, 'paths'), child(root, 'stations')]
  const ofPath = (path: PathDraft, key: string): Located | null => {
    const [zone, next] = [zones[path.from] ?? null, zones[path.to] ?? null]
    if (key === 'distance') return path.at ?? list ?? root
    if (key === 'length') return path.at ?? next?.at ?? root
    if (key === 'speed') return drive === null || drive.kind === 'map' ? (path.at ?? drive ?? zone?.at ?? root) : null
    return path.at ?? zone?.at ?? root
  }
  return ({ part, index, key }) => {
    if (part === 'path') return ofPath(paths[index]!, key)
    if (part === 'zone')
      return key === '' ? zones[index]!.at : (own(zones[index]!, key as FileKey) ?? childNamed(drive, key) ?? zones[index]!.at)
    if (part === 'station') return childNamed(stations[index]!.at, key) ?? stations[index]!.at
    if (part === 'stations') return work?.kind === 'map' ? work : null
    if (part === 'corners') return child(root, 'corners') ?? child(root, 'zones') ?? root
    if (part === 'paths') return hasLost && key !== '' ? null : (list ?? root)
    if (carriers === null) return null
    if (key === 'count') return carriers.countAt
    return key === 'start' ? (carriers.startAt ?? carriers.at) : (childNamed(carriers.at, key) ?? carriers.at)
  }
}
