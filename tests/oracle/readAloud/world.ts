/** Everything that is true at an instant, and how it stands at time 0. (MODEL.md §1, §10) */
import type { LineSpec, Position } from '@loopwright/line'
import { type Draws, openDraws } from './draws.ts'
import type { Duty, LogEntry } from './eventLog.ts'
import { onGrid } from './grid.ts'
import type { Gait } from './motion.ts'

export interface Zone {
  state: 'free' | 'claimed' | 'occupied' | 'vacating'
  /** the carrier for which the zone is claimed, which occupies it or which is on its way out; null while free */
  carrier: number | null
  /** null: no transfer */
  position: Position | null
  /** a position change under way */
  change: { to: Position; left: number } | null
}

export interface Product {
  readonly serial: number
  readonly variant: number
  readonly loadedAt: number
  /** tasks it has had */
  readonly had: Set<number>
}

export interface Carrier {
  /** the zone in which it is counted: "from its move's start in to its start out" */
  zone: number
  atRest: boolean
  product: Product | null
  /** of this stay: how many of unload, load, work lie behind it */
  dutiesBehind: number
  work: { readonly duty: Duty; left: number } | null
  release: 'ahead' | { left: number } | 'over'
  /** since when it waits for a move's start; null: it is not done */
  waitsSince: number | null
}

export interface Move {
  readonly carrier: number
  readonly from: number
  readonly to: number
  readonly start: Gait
  /** `looking`: its carrier is at the end of the move, at speed, and sees whether its next move can start */
  stage: 'on its way to look' | 'looking' | 'on its way to rest' | 'arrived'
  /** of the stage */
  left: number
  /** from the look to rest, if it cannot pass */
  readonly brakeSeconds: number
  /** null: clear */
  clearLeft: number | null
}

export interface World {
  readonly spec: LineSpec
  readonly draws: Draws
  t: number
  readonly zones: Zone[]
  readonly carriers: Carrier[]
  /** moves in progress: "until it has arrived and i is clear" */
  moves: Move[]
  /** by station: a product is set aside for it */
  readonly setAside: boolean[]
  /** by breakdown source: down, and what is left of the repair; or up, and what is left to the failure */
  readonly sources: { down: boolean; left: number }[]
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

export function isExitClear(spec: LineSpec, zone: number): boolean {
  return spec.zones[zone]!.transfer?.enterOnlyIfExitClear === true
}

export function pathOut(spec: LineSpec, zone: number): number {
  return spec.paths.findIndex((path) => path.from === zone)
}

export function zoneAfter(spec: LineSpec, zone: number): number {
  return spec.paths[pathOut(spec, zone)]!.to
}

export function positionIn(spec: LineSpec, zone: number): Position {
  return spec.paths.find((path) => path.to === zone)!.toPosition
}

export function positionOut(spec: LineSpec, zone: number): Position {
  return spec.paths.find((path) => path.from === zone)!.fromPosition
}

function startZones(spec: LineSpec): number[] {
  const { count, start } = spec.carriers
  const places = waitingPlaces(spec)
  const zones: number[] = []
  for (let c = 0; c < count; c++) {
    if (start === 'spread') zones.push(places[Math.floor((c * places.length) / count)]!)
    else if (start === 'packed') zones.push(places[c]!)
    else zones.push((start as readonly number[])[c]!)
  }
  return zones
}

/** The line at time 0, before anything of that instant has happened. (MODEL.md §10) */
export function worldAtStart(spec: LineSpec, seed: string, replication: number): World {
  const draws = openDraws(seed, replication)
  const starts = startZones(spec)
  const zones: Zone[] = spec.zones.map((zone, index) => {
    const carrier = starts.indexOf(index)
    const occupied = carrier >= 0
    // "an occupied transfer stands as its way out needs, an empty one as its way in needs"
    const position = zone.transfer === null ? null : occupied ? positionOut(spec, index) : positionIn(spec, index)
    return { state: occupied ? 'occupied' : 'free', carrier: occupied ? carrier : null, position, change: null }
  })
  const carriers: Carrier[] = starts.map((zone) => ({
    zone,
    atRest: true,
    product: null,
    dutiesBehind: 3, // "they have no duty there before their next arrival"
    work: null,
    release: 'over',
    waitsSince: 0,
  }))
  return {
    spec,
    draws,
    t: 0,
    zones,
    carriers,
    moves: [],
    setAside: spec.stations.map(() => false),
    sources: spec.breakdowns.map((source) => ({
      down: false,
      left: draws.inOrder(`down/${source.name}`, source.timeToFailureSeconds), // "The first time to failure starts at time 0"
    })),
    breaks: spec.breaks.map((pause) => ({ state: 'ahead', left: onGrid(pause.startSeconds) })),
    productsLoaded: 0,
    loadedByVariant: spec.variants.map(() => 0),
    log: [],
  }
}
