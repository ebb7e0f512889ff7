/** Zones: claimed by a carrier, waited in, and free again. (MODEL.md §2) */
import { wake } from './moveHeap.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { CLAIMED, DONE, FREE } from '../state/moves.ts'
import { wayNow } from './wayOut.ts'

/** Claims the zone, and behind exit-clear transfers the zones up to the next place to stand; those are only set aside. */
export function claim(line: Line, to: number, carrier: number): void {
  const { moves, graph } = line
  let zone = to
  while (zone !== line.store && moves.zoneState[zone] === FREE) {
    moves.zoneState[zone] = CLAIMED
    moves.zoneClaimant[zone] = carrier
    line.collector.touch(zone)
    if (graph.exitClear[zone] === 0) return
    const way = wayNow(line, zone, carrier)
    if (graph.onlyOut[zone] === NONE) moves.zoneWay[zone] = way
    zone = graph.pathTo[way]!
  }
}

/** Nothing is left to do here: the carrier waits to move on. */
export function becomeDone(line: Line, carrier: number, zone: number): void {
  const { moves } = line
  moves.carrierPhase[carrier] = DONE
  moves.carrierSince[carrier] = line.now
  line.collector.touch(zone)
  wake(line, zone)
}

/** The zone turns free: whoever waits for it may try. */
export function becomeFree(line: Line, zone: number): void {
  line.moves.zoneState[zone] = FREE
  line.collector.touch(zone)
  const { first, items } = line.graph.feeders
  for (let k = first[zone]!; k < first[zone + 1]!; k++) wake(line, items[k]!)
}
