/** Gridlock and out of products, judged at the end of each instant "as if no stop were there". (MODEL.md §10) */
import type { RunEnd } from '@loopwright/line'
import { somethingCouldStart, waitsForProduct } from './starts.ts'
import { isExitClear, type World, zoneAfter } from './world.ts'

/** null: the line goes on */
export function standstill(w: World): RunEnd | null {
  const moving = w.moves.length > 0
  const working = w.carriers.some((carrier) => carrier.work !== null || typeof carrier.release !== 'string')
  const changing = w.zones.some((zone) => zone.change !== null)
  if (moving || working || changing || somethingCouldStart(w)) return null
  const outOfProducts = w.spec.stations.some((_, station) => waitsForProduct(w, station))
  const waits = waitingPairs(w)
  return { reason: outOfProducts ? 'out of products' : 'gridlock', atSeconds: w.t, waits, cycle: firstCycle(waits), unmanned: [] }
}

/** "(zone, zone it waits for; behind an exit-clear transfer the zone after it)", by zone */
function waitingPairs(w: World): [number, number][] {
  const pairs: [number, number][] = []
  w.zones.forEach((zone, index) => {
    if (zone.state !== 'occupied' || w.carriers[zone.carrier!]!.waitsSince === null) return
    let ahead = zoneAfter(w.spec, index)
    while (isExitClear(w.spec, ahead)) ahead = zoneAfter(w.spec, ahead)
    pairs.push([index, ahead])
  })
  return pairs
}

/** "the first cycle met when these are followed from the lowest zone" */
function firstCycle(pairs: readonly (readonly [number, number])[]): number[] {
  for (const [lowest] of pairs) {
    const way: number[] = []
    let zone: number | undefined = lowest
    while (zone !== undefined && !way.includes(zone)) {
      way.push(zone)
      zone = pairs.find(([from]) => from === zone)?.[1]
    }
    if (zone !== undefined) return way.slice(way.indexOf(zone))
  }
  return []
}
