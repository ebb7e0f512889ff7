/** Where products come at all: stations that none reaches, and spurs that no carrier ever enters. */
import { mixShares } from '../bounds/law.ts'
import { servedLoads } from '../bounds/servedLoads.ts'
import { type LineSpec, type PathSpec, STORE, type TakesSpec } from '../spec.ts'
import { at, type Finding, found } from './finding.ts'
import { isRing } from './draftLine.ts'
import { sentences as say } from './sentences.ts'

/**
 * Zones into which a carrier with a product may come: from the load stations on, up to those that take every product off.
 *
 * @example [...productZones(line)] // => [0, 1, 2, 3, 4]
 */
export function productZones(line: LineSpec): Set<number> {
  const made = mixShares(line.mix, line.variants.length)
  const rejects = line.inspections.some(({ rejectProbability }) => rejectProbability > 0)
  const empties = new Set(
    line.stations
      .filter((one) => one.unload !== null && one.load === null && (one.accepts === 'all' || (one.accepts === 'good' && !rejects)))
      .map(({ zone }) => zone),
  )
  const ways = new Map<number, number[]>()
  for (const { from, to, takes } of line.paths) {
    const nobody =
      takes.load === 'empty' || (takes.rejected === true && !rejects) || takes.variants?.every((one) => !(made[one]! > 0)) === true
    if (!nobody) ways.set(from, [...(ways.get(from) ?? []), to])
  }
  const reached = new Set(line.stations.filter(({ load }) => load !== null).map(({ zone }) => zone))
  for (const zone of reached) if (!empties.has(zone)) for (const to of ways.get(zone) ?? []) reached.add(to)
  return reached
}

/** Stations with work or unload to which no product comes; those between the same two stations are one finding. */
function checkReach(line: LineSpec): Finding[] {
  if (!line.stations.some(({ load }) => load !== null)) return []
  const reached = productZones(line)
  const groups = new Map<string, { index: number; names: string[]; why: readonly [string, string] | null }>()
  for (const [index, { zone, load, name }] of line.stations.entries()) {
    if (load !== null || reached.has(zone)) continue
    const why = isRing(line) ? between(line, zone) : null
    const key = JSON.stringify(why)
    const group = groups.get(key) ?? { index, names: [], why }
    group.names.push(name)
    groups.set(key, group)
  }
  return [...groups.values()].map(({ index, names, why }) => found(at('station', index, 'zone'), say.stationUnreached(names, why)))
}

/** Load stations to which no empty carrier comes, since others before them load every one. */
function checkLoads(line: LineSpec): Finding[] {
  const served = servedLoads(line)
  const before = served.map((station) => line.stations[station]!.name)
  return line.stations.flatMap(({ load, name }, index) =>
    load === null || served.includes(index) ? [] : [found(at('station', index, 'zone'), say.loadUnreached(name, before))],
  )
}

/** The unload station behind which, and the load station before which a zone of a loop lies. */
function between({ zones, stations }: LineSpec, zone: number): [string, string] | null {
  const nearest = (step: number, duty: 'unload' | 'load'): string | null => {
    for (let k = 1; k < zones.length; k++) {
      const there = stations.find((one) => one.zone === (zone + step * k + k * zones.length) % zones.length)
      if (there?.[duty] != null) return there.name
    }
    return null
  }
  const [unload, load] = [nearest(-1, 'unload'), nearest(1, 'load')]
  return unload === null || load === null ? null : [unload, load]
}

/** A way through exit-clear transfers that can only lead back to where it begins: its end is never free. */
function checkSpurs(line: LineSpec): Finding[] {
  const isPassage = (zone: number): boolean => zone !== STORE && line.zones[zone]?.transfer?.enterOnlyIfExitClear === true
  const ends = (zone: number, seen: Set<number>): number[] => {
    if (!isPassage(zone)) return [zone]
    if (seen.has(zone)) return []
    seen.add(zone)
    return line.paths.filter(({ from }) => from === zone).flatMap(({ to }) => ends(to, seen))
  }
  return line.paths.flatMap(({ from, to }, k) => {
    if (isPassage(from) || from === STORE || !isPassage(to)) return []
    const out = ends(to, new Set())
    if (out.length === 0 || out.some((end) => end !== from)) return []
    return [found(at('path', k, 'to'), say.spurNeverEntered(line.zones[to]!.name, line.zones[from]!.name))]
  })
}

/** Whether every carrier that `later` takes is taken by `earlier`, in the same rank of ways: those for rejects, those with conditions, the others. */
function takesAll(earlier: TakesSpec, later: TakesSpec): boolean {
  if (isOpen(earlier) || isOpen(later)) return isOpen(earlier) && isOpen(later)
  return (
    (earlier.variants === null || later.variants?.every((variant) => earlier.variants!.includes(variant)) === true) &&
    (earlier.load === null || earlier.load === later.load) &&
    (earlier.rejected === later.rejected || (earlier.rejected === null && later.rejected === false)) &&
    (earlier.forStation === null || earlier.forStation === later.forStation)
  )
}

const isOpen = ({ variants, load, rejected, forStation }: TakesSpec): boolean =>
  variants === null && load === null && rejected === null && forStation === null

/** Ways out of a zone that takes the first way which an earlier one takes all carriers from. (MODEL.md §3) */
function checkNeverTaken({ zones, paths }: LineSpec): Finding[] {
  const nameOf = (end: number): string => zones[end]?.name ?? 'store'
  const earlier = new Map<number, PathSpec[]>()
  return paths.flatMap((path, k) => {
    const { from, to, takes } = path
    if (from === STORE || zones[from]?.divert !== 'first') return []
    const others = earlier.get(from) ?? []
    earlier.set(from, [...others, path])
    const before = others.find((other) => takesAll(other.takes, takes))
    return before === undefined ? [] : [found(at('path', k), say.wayNeverTaken(nameOf(from), nameOf(to), nameOf(before.to)))]
  })
}

/** Stations that no product comes to, load stations without empty carriers, spurs and ways that no carrier takes. */
export const checkReached = (line: LineSpec): Finding[] => [
  ...checkReach(line),
  ...checkLoads(line),
  ...checkSpurs(line),
  ...checkNeverTaken(line),
]
