/** Transfers at quick instants (quick.ts): what they set aside, and their turns. (MODEL.md §4) */
import { S_EXCHANGING, S_STARVED, Z_CLAIMED, Z_OTHER } from '../telling/states.ts'
import { nextZoneTakes } from '../moves/clear.ts'
import { waitingState } from '../telling/judge.ts'
import { settleCarrier, settleStation, settleZone } from './settle.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { CHANGING, CLAIMED } from '../state/moves.ts'
import { TO_WAY_OUT } from '../state/transfers.ts'
import { startChange } from '../moves/transfer.ts'

/** Whether the carrier of the zone can leave it, where a transfer that is entered only if its exit is clear has a say. */
export function canLeave(line: Line, from: number): boolean {
  return nextZoneTakes(line, line.graph.onlyOut[from]!, line.moves.zoneCarrier[from]!)
}

/** Whether a stop holds the zone, one that its carrier may move to, or one that is set aside with that. */
export function isHeldAhead(line: Line, from: number): boolean {
  const { zoneHeld } = line.stops
  const { exitClear, zoneNext, outs, pathTo } = line.graph
  let holds = zoneHeld[from]!
  if (zoneNext[from] === NONE) {
    for (let k = outs.first[from]!; k < outs.first[from + 1]!; k++) holds += zoneHeld[pathTo[outs.items[k]!]!]!
    return holds > 0
  }
  let zone = zoneNext[from]!
  holds += zoneHeld[zone]!
  while (exitClear[zone] === 1) {
    zone = zoneNext[zone]!
    if (zone < 0) break
    holds += zoneHeld[zone]!
  }
  return holds > 0
}

/** Sets the zones behind exit-clear transfers aside for the carrier that enters the first of them. */
export function claimBehind(line: Line, entered: number, carrier: number): void {
  const { collector, moves } = line
  const { exitClear, zoneNext } = line.graph
  for (let zone = entered; exitClear[zone] === 1; ) {
    zone = zoneNext[zone]!
    moves.zoneState[zone] = CLAIMED
    moves.zoneClaimant[zone] = carrier
    settleZone(line, zone, Z_CLAIMED)
    const station = line.work.zoneStation[zone]!
    if (station !== NONE && collector.stationState[station] === S_STARVED) settleStation(line, station, S_EXCHANGING)
  }
}

/** The carrier at rest on the transfer waits while that turns to the way out. */
export function turnOut(line: Line, zone: number, carrier: number): void {
  line.moves.carrierPhase[carrier] = CHANGING
  line.transfers.zoneChange[zone] = TO_WAY_OUT
  startChange(line, zone, carrier, 0)
  settleZone(line, zone, Z_OTHER)
  settleCarrier(line, carrier, waitingState(line, carrier))
}

/** The zone whose carrier may wait for this one, which turned free. */
export function waitsBehind(line: Line, zone: number): number {
  const { graph } = line
  let before = graph.zonePrevious[zone]!
  while (graph.exitClear[before] === 1 && line.moves.zoneCarrier[before] === NONE) before = graph.zonePrevious[before]!
  return before
}
