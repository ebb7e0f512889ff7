/** The line at time 0, before anything of that instant has happened. (MODEL.md §10) */
import { type LineSpec, type Position, STORE } from '@loopwright/line'
import { openDraws } from './draws.ts'
import { openReceivers, openSupplies } from './goods.ts'
import { onGrid } from './grid.ts'
import { operatorsAtStart } from './people.ts'
import { wayOutAtStart } from './wayOut.ts'
import { type Carrier, positionIn, positionOut, type World, waitingPlaces, type Zone } from './world.ts'

function startPlaces(spec: LineSpec): number[] {
  const { count, start } = spec.carriers
  const waiting = waitingPlaces(spec)
  const places: number[] = []
  for (let c = 0; c < count; c++) {
    if (start === 'spread') places.push(waiting[Math.floor((c * waiting.length) / count)]!)
    else if (start === 'packed') places.push(waiting[c]!)
    else if (start === 'store') places.push(STORE)
    else places.push((start as readonly number[])[c]!)
  }
  return places
}

export function worldAtStart(spec: LineSpec, seed: string, replication: number): World {
  const draws = openDraws(seed, replication)
  const starts = startPlaces(spec)
  const zones: Zone[] = spec.zones.map((_, index) => {
    const carrier = starts.indexOf(index)
    return {
      state: carrier >= 0 ? 'occupied' : 'free',
      carrier: carrier >= 0 ? carrier : null,
      position: null,
      change: null,
      lastPathIn: null,
    }
  })
  const carriers: Carrier[] = starts.map((place) => ({
    place,
    atRest: true,
    product: null,
    dutiesBehind: 3, // "they have no duty there before their next arrival"
    work: null,
    release: 'over',
    waitsSince: 0,
    fixedWays: new Map(),
  }))
  const w: World = {
    spec,
    draws,
    t: 0,
    zones,
    carriers,
    moves: [],
    startsOut: new Map(),
    setAside: spec.stations.map(() => false),
    calledSince: spec.stations.map(() => null),
    operators: operatorsAtStart(spec),
    supplies: openSupplies(spec, draws),
    receivers: openReceivers(spec),
    sources: spec.breakdowns.map((source) => {
      const left = draws.inOrder(`down/${source.name}`, source.timeToFailureSeconds) // "The first time to failure starts at time 0"
      return { down: false, failedAt: 0, inRepair: false, left, isZero: left === 0 }
    }),
    safetyStops: [],
    breaks: spec.breaks.map((pause) => ({ state: 'ahead', left: onGrid(pause.startSeconds) })),
    productsLoaded: 0,
    loadedByVariant: spec.variants.map(() => 0),
    log: [],
  }
  zones.forEach((zone, index) => {
    if (spec.zones[index]!.transfer !== null) zone.position = positionAtStart(w, index)
  })
  return w
}

/** "an occupied transfer stands as its way out (by the rule of §3) needs, an empty one as its (first) way in needs" */
function positionAtStart(w: World, zone: number): Position {
  const { carrier } = w.zones[zone]!
  const way = carrier === null ? null : wayOutAtStart(w, carrier)
  if (way !== null) return w.spec.paths[way]!.fromPosition
  return positionIn(w.spec, zone) ?? positionOut(w.spec, zone) ?? 'low'
}
