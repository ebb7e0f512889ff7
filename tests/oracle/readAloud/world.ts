/** Everything that is true at an instant. (MODEL.md §1) How it stands at time 0 is in `worldAtStart.ts`. */
import { type LineSpec, type Position, STORE, type TaskSpec } from '@loopwright/line'
import type { Draws } from './draws.ts'
import type { Duty, LogEntry } from './eventLog.ts'
import type { Gait } from './motion.ts'

export interface Zone {
  state: 'free' | 'claimed' | 'occupied' | 'vacating'
  /** the carrier for which the zone is claimed, which occupies it or which is on its way out; null while free */
  carrier: number | null
  /** null: no transfer */
  position: Position | null
  /** a position change under way */
  change: { to: Position; left: number } | null
  /** "the path used last" by which a carrier came in; null: none yet */
  lastPathIn: number | null
}

export interface Product {
  readonly serial: number
  readonly variant: number
  readonly loadedAt: number
  /** tasks it has had */
  readonly had: Set<number>
  rejected: boolean
  /** "a rejected product gets a list" */
  list: Set<number>
  /** the list is of this stay: its tasks wait for the next arrival */
  listIsNew: boolean
}

export interface Carrier {
  /** the zone, or STORE, in which it is counted: "from its move's start in to its start out" */
  place: number
  atRest: boolean
  product: Product | null
  /** of this stay: how many of unload, load, work lie behind it */
  dutiesBehind: number
  work: { readonly duty: Duty; readonly tasks: readonly TaskSpec[]; left: number } | null
  release: 'ahead' | { left: number } | 'over'
  /** since when it waits for a move's start; null: it is not done */
  waitsSince: number | null
  /** by zone: its way out of there is fixed already, to this path */
  readonly fixedWays: Map<number, number>
}

export interface Move {
  readonly carrier: number
  readonly path: number
  readonly from: number
  readonly to: number
  readonly start: Gait
  /** `looking`: its carrier is at the end of the move, at speed, and sees whether its next move can start */
  stage: 'on its way to look' | 'looking' | 'on its way to rest' | 'arrived'
  /** of the stage */
  left: number
  /** from the look to rest, if it cannot pass */
  readonly brakeSeconds: number
  /** null: clear, or never in the way of anybody (out of the store) */
  clearLeft: number | null
  /** somebody is in the way: what is left until the section stops; null: nobody, or over */
  safetyLeft: number | null
  /** whose safety stop that is */
  readonly safetyStation: number | null
}

/** Somebody who must come before work or a push starts: named, or a station's own where that station has a push or pull. */
export interface Operator {
  readonly covers: readonly number[]
  /** the station whose own operator it is; null: a named one */
  readonly ownOf: number | null
  /** index of a station */
  place: number
  /** null: free */
  task:
    | { readonly kind: 'station'; readonly station: number }
    | { readonly kind: 'path'; readonly path: number; readonly carrier: number }
    | null
  /** null: not walking */
  walkLeft: number | null
}

export interface Supply {
  readonly name: string
  /** products that wait, the one that came first first; those set aside count until their load starts */
  queue: { readonly since: number; setAsideFor: number | null }[]
  /** null: nothing more comes, or it is always there */
  nextLeft: number | null
  came: number
}

export interface Receiver {
  /** what is left of the cycle; null: it works on nothing */
  left: number | null
  waiting: number
  /** a place is set aside for the carrier in the station */
  setAside: boolean
}

export interface World {
  readonly spec: LineSpec
  readonly draws: Draws
  t: number
  readonly zones: Zone[]
  readonly carriers: Carrier[]
  /** moves in progress: "until it has arrived and i is clear" */
  moves: Move[]
  /** by zone, and STORE: move starts out of it */
  readonly startsOut: Map<number, number>
  /** by station: a product is set aside for it */
  readonly setAside: boolean[]
  /** by station: since when it calls; null: it does not */
  readonly calledSince: (number | null)[]
  readonly operators: Operator[]
  /** 0: the line's; then by station, null where the station has none of its own */
  readonly supplies: (Supply | null)[]
  /** by station; null: always ready, or no unload */
  readonly receivers: (Receiver | null)[]
  /** by breakdown source: down, since when, whether somebody repairs it, and what is left of the repair; or up, what is left to the failure, and whether that was 0 from the start and is not reached yet */
  readonly sources: { down: boolean; failedAt: number; inRepair: boolean; left: number; isZero: boolean }[]
  /** safety stops that are on */
  safetyStops: { readonly station: number; left: number }[]
  readonly breaks: { state: 'ahead' | 'on' | 'over'; left: number }[]
  productsLoaded: number
  readonly loadedByVariant: number[]
  readonly log: LogEntry[]
}

/** zones that are no exit-clear transfers */
export function waitingPlaces(spec: LineSpec): number[] {
  const places: number[] = []
  for (let zone = 0; zone < spec.zones.length; zone++) if (!isExitClear(spec, zone)) places.push(zone)
  return places
}

export function isExitClear(spec: LineSpec, place: number): boolean {
  return place !== STORE && spec.zones[place]!.transfer?.enterOnlyIfExitClear === true
}

/** the paths out of a zone, or the store, by index */
export function pathsOut(spec: LineSpec, place: number): readonly number[] {
  const known = outOf.get(spec) ?? new Map<number, number[]>()
  outOf.set(spec, known)
  const paths = known.get(place) ?? spec.paths.flatMap(({ from }, path) => (from === place ? [path] : []))
  known.set(place, paths)
  return paths
}
/** of each line by place: asked for all the time */
const outOf = new WeakMap<LineSpec, Map<number, number[]>>()

function pathsIn(spec: LineSpec, place: number): number[] {
  return [...spec.paths.keys()].filter((path) => spec.paths[path]!.to === place)
}

/** the zone after, where there is one way out */
export function zoneAfter(spec: LineSpec, zone: number): number {
  return spec.paths[pathsOut(spec, zone)[0]!]!.to
}

/** what the first way in needs; null: none */
export function positionIn(spec: LineSpec, zone: number): Position | null {
  return spec.paths.find((path) => path.to === zone)?.toPosition ?? null
}

/** what the first way out needs; null: none */
export function positionOut(spec: LineSpec, zone: number): Position | null {
  return spec.paths.find((path) => path.from === zone)?.fromPosition ?? null
}

/** "with ways in of different positions" */
export function waysInDiffer(spec: LineSpec, zone: number): boolean {
  return new Set(pathsIn(spec, zone).map((path) => spec.paths[path]!.toPosition)).size > 1
}

/** "a transfer whose ways out need different positions" */
export function waysOutDiffer(spec: LineSpec, zone: number): boolean {
  if (spec.zones[zone]!.transfer === null) return false
  return new Set(pathsOut(spec, zone).map((path) => spec.paths[path]!.fromPosition)).size > 1
}
