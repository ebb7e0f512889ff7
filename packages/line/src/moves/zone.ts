/**
 * Zones: claimed by a carrier, waited in, and free again. (MODEL.md §2)
 * What must hold is asserted in pairs, in every run: where a zone is claimed and where the move into it starts (move.ts), where that starts and where it ends, where a
 * carrier comes to rest and where it is done, where it is let go and where the zone behind it turns free. verify mode checks the rest after each instant.
 */
import { assert } from '@loopwright/kernel'
import { wake } from './moveHeap.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { CLAIMED, DONE, FREE, OCCUPIED, VACATING } from '../state/moves.ts'
import { wayNow } from './wayOut.ts'

/** Claims the zone, and behind exit-clear transfers the zones up to the next place to stand; those are only set aside. */
export function claim(line: Line, to: number, carrier: number): void {
  const { moves, graph } = line
  let zone = to
  while (zone !== line.store && moves.zoneState[zone] === FREE) {
    assert(moves.zoneCarrier[zone] === NONE, 'a zone is claimed that a carrier counts in')
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
  assert(moves.zoneState[zone] === OCCUPIED && moves.zoneCarrier[zone] === carrier, 'a carrier is done where it does not stand')
  moves.carrierPhase[carrier] = DONE
  moves.carrierSince[carrier] = line.now
  line.collector.touch(zone)
  wake(line, zone)
}

/** The zone turns free: whoever waits for it may try. */
export function becomeFree(line: Line, zone: number): void {
  assert(line.moves.zoneState[zone] === VACATING && line.moves.zoneCarrier[zone] === NONE, 'a zone turns free that nobody has left')
  line.moves.zoneState[zone] = FREE
  line.collector.touch(zone)
  const { first, items } = line.graph.feeders
  for (let k = first[zone]!; k < first[zone + 1]!; k++) wake(line, items[k]!)
}
