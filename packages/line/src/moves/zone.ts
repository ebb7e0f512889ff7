/** Zones: claimed by a carrier, waited in, and free again. (MODEL.md §2) */
import { wake } from './moveHeap.ts'
import { CLAIMED, DONE, FREE, type Line, NONE } from '../instant/state.ts'
import { wayNow } from './wayOut.ts'

/** Claims the zone, and behind exit-clear transfers the zones up to the next place to stand; those are only set aside. */
export function claim(line: Line, to: number, carrier: number): void {
  let zone = to
  while (zone !== line.store && line.zoneState[zone] === FREE) {
    line.zoneState[zone] = CLAIMED
    line.zoneClaimant[zone] = carrier
    line.collector.touch(zone)
    if (line.exitClear[zone] === 0) return
    const way = wayNow(line, zone, carrier)
    if (line.onlyOut[zone] === NONE) line.zoneWay[zone] = way
    zone = line.pathTo[way]!
  }
}

/** Nothing is left to do here: the carrier waits to move on. */
export function becomeDone(line: Line, carrier: number, zone: number): void {
  line.carrierPhase[carrier] = DONE
  line.carrierSince[carrier] = line.now
  line.collector.touch(zone)
  wake(line, zone)
}

/** The zone turns free: whoever waits for it may try. */
export function becomeFree(line: Line, zone: number): void {
  line.zoneState[zone] = FREE
  line.collector.touch(zone)
  const { first, items } = line.feeders
  for (let k = first[zone]!; k < first[zone + 1]!; k++) wake(line, items[k]!)
}
