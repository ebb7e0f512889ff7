/** Zones that one closed loop has and another has not, whatever the zones are called: what a renumbered loop really changes. */
import type { BreakdownPart, LineSpec } from '@loopwright/line'
import { isRing } from '@loopwright/line/check'
import type { Scenario } from '../scenario.ts'

/** Zones beside each other that only one of two loops has. */
export interface ZoneRun {
  readonly kind: 'put in' | 'taken out'
  /** names in the loop that has them, in travel order */
  readonly zones: readonly string[]
  /** station or zone that follows them, by its name in the first loop */
  readonly before: string
}

export interface ZoneChanges {
  readonly runs: readonly ZoneRun[]
  /** both without the zones of the other, and with the same names for the same zones */
  readonly before: Scenario
  readonly after: Scenario
}

/** the time grows with the square of the zones */
const ZONES_MAX = 1000

/**
 * What zones were put in or taken out, and the two scenarios without them.
 *
 * @returns  null where the two are no closed loops, have the same zones by name, or differ by more than plain zones (no station, no
 *           transfer, nothing but stops that names them)
 */
export function zoneChanges(before: Scenario, after: Scenario): ZoneChanges | null {
  const [a, b] = [before.line, after.line]
  const names = (line: LineSpec): string => JSON.stringify(line.zones.map(({ name }) => name))
  if (names(a) === names(b) || !isRing(a) || !isRing(b)) return null
  if (Math.max(a.zones.length, b.zones.length) > ZONES_MAX) return null
  const [signsA, signsB] = [signs(before), signs(after)]
  const pairs = byName(a, b, signsA, signsB) ?? common(signsA, signsB)
  const onlyA = new Set(a.zones.keys())
  const onlyB = new Set(b.zones.keys())
  for (const [i, j] of pairs) {
    onlyA.delete(i)
    onlyB.delete(j)
  }
  if ([...onlyA].some((zone) => !isPlain(a, zone)) || [...onlyB].some((zone) => !isPlain(b, zone))) return null
  const newNames = new Map(pairs.map(([i, j]) => [j, a.zones[i]!.name]))
  const next = (line: LineSpec, zone: number, gone: ReadonlySet<number>): number => {
    let at = zone
    do at = (at + 1) % line.zones.length
    while (gone.has(at))
    return at
  }
  const called = (line: LineSpec, zone: number, name: string): string => line.stations.find((one) => one.zone === zone)?.name ?? name
  const runs = [
    ...grouped(onlyA, (zone) => next(a, zone, onlyA)).map(
      ([end, zones]): ZoneRun => ({
        kind: 'taken out',
        zones: zones.map((k) => a.zones[k]!.name),
        before: called(a, end, a.zones[end]!.name),
      }),
    ),
    ...grouped(onlyB, (zone) => next(b, zone, onlyB)).map(
      ([end, zones]): ZoneRun => ({
        kind: 'put in',
        zones: zones.map((k) => b.zones[k]!.name),
        before: called(b, end, newNames.get(end)!),
      }),
    ),
  ]
  return { runs, before: without(before, onlyA, new Map()), after: without(after, onlyB, newNames) }
}

/** What each zone is, but for its name. */
function signs({ line, layout }: Scenario): string[] {
  return line.zones.map(({ name: _, merge: __, ...zone }, index) => {
    const station = line.stations.find((one) => one.zone === index)?.name ?? null
    return JSON.stringify([zone, layout.turns[index] ?? null, station])
  })
}

/** Zones of one name, where all of them are the same zone and stand in the same order; null where one does not. */
function byName(
  before: LineSpec,
  after: LineSpec,
  signsBefore: readonly string[],
  signsAfter: readonly string[],
): [number, number][] | null {
  const there = new Map(after.zones.map(({ name }, index) => [name, index]))
  const pairs = before.zones.flatMap(({ name }, i): [number, number][] => {
    const j = there.get(name)
    return j === undefined ? [] : [[i, j]]
  })
  const same = pairs.every(([i, j], k) => signsBefore[i] === signsAfter[j] && (k === 0 || pairs[k - 1]![1] < j))
  return same && pairs.length > 0 ? pairs : null
}

/** Zones that hold nothing and that only stops may name. */
function isPlain(line: LineSpec, zone: number): boolean {
  const { start } = line.carriers
  return (
    line.zones[zone]!.transfer === null &&
    line.stations.every((one) => one.zone !== zone) &&
    line.paths[zone]!.fromPosition === 'low' &&
    (typeof start === 'string' || !start.includes(zone)) &&
    line.zones.every(({ merge }) => merge.kind !== 'priority' || !merge.from.includes(zone))
  )
}

/** Indices of a longest common sequence of the two, the earliest of equals: what one has more comes at the end of a row of equal zones. */
function common(a: readonly string[], b: readonly string[]): [number, number][] {
  const width = b.length + 1
  const longest = new Int32Array((a.length + 1) * width)
  for (let i = a.length - 1; i >= 0; i--)
    for (let j = b.length - 1; j >= 0; j--)
      longest[i * width + j] =
        a[i] === b[j] ? longest[(i + 1) * width + j + 1]! + 1 : Math.max(longest[(i + 1) * width + j]!, longest[i * width + j + 1]!)
  const pairs: [number, number][] = []
  let [i, j] = [0, 0]
  while (i < a.length && j < b.length) {
    if (a[i] === b[j]) pairs.push([i++, j++])
    else if (longest[(i + 1) * width + j]! >= longest[i * width + j + 1]!) i++
    else j++
  }
  return pairs
}

/** Zones by the one that follows them, both in travel order. */
function grouped(zones: ReadonlySet<number>, end: (zone: number) => number): [number, number[]][] {
  const groups = new Map<number, number[]>()
  for (const zone of zones) groups.set(end(zone), [...(groups.get(end(zone)) ?? []), zone])
  return [...groups]
}

/** The scenario without some plain zones of its loop; the rest by new names where there are any. */
function without(scenario: Scenario, gone: ReadonlySet<number>, newNames: ReadonlyMap<number, string>): Scenario {
  const { line } = scenario
  const kept = [...line.zones.keys()].filter((zone) => !gone.has(zone))
  const index = new Map(kept.map((zone, k) => [zone, k]))
  const at = (zone: number): number => index.get(zone) ?? zone
  const zones = kept.map((zone) => {
    const { name, merge, ...rest } = line.zones[zone]!
    return { ...rest, name: newNames.get(zone) ?? name, merge: merge.kind === 'priority' ? { ...merge, from: merge.from.map(at) } : merge }
  })
  // the way into the zone behind a gap stays; the ways into the gap go with it
  const paths = kept.map((zone, k) => {
    const to = (k + 1) % kept.length
    const into = line.paths[(kept[to]! + line.zones.length - 1) % line.zones.length]!
    return { ...into, from: k, to, fromPosition: line.paths[zone]!.fromPosition }
  })
  const named = (name: string, part: BreakdownPart): string => {
    if (part.kind !== 'zone' && part.kind !== 'transfer') return name
    const old = line.zones[part.index]!.name
    return name.endsWith(` ${old}`) ? `${name.slice(0, -old.length)}${newNames.get(part.index) ?? old}` : name
  }
  const { start } = line.carriers
  return {
    ...scenario,
    layout: { turns: kept.map((zone) => scenario.layout.turns[zone] ?? null) },
    line: {
      ...line,
      zones,
      paths,
      stations: line.stations.map((station) => ({ ...station, zone: at(station.zone) })),
      carriers: { ...line.carriers, start: typeof start === 'string' ? start : start.map(at) },
      sections: line.sections.map((section) => ({ ...section, zones: section.zones.filter((zone) => !gone.has(zone)).map(at) })),
      breakdowns: line.breakdowns
        .filter(({ part }) => !((part.kind === 'zone' || part.kind === 'transfer') && gone.has(part.index)))
        .map((stop) => {
          const { part } = stop
          const moved = part.kind === 'zone' || part.kind === 'transfer' ? { ...part, index: at(part.index) } : part
          return { ...stop, name: named(stop.name, part), part: moved }
        }),
    },
  }
}
