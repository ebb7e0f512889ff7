/**
 * Rests without a timer: a carrier that brakes and cannot leave before it is at rest changes nothing for others then. The instant is kept, and made good when the zone
 * ahead clears, when an instant is not quick, or at the end of a part of a run. (MODEL.md §3)
 */
import { S_BLOCKED, Z_BLOCKED } from '../telling/states.ts'
import { BLOCKED_SINCE, CARRIER_SINCE, CARRIER_WIDTH, STATION_SINCE, STATION_WIDTH, ZONE_SINCE, ZONE_WIDTH } from '../telling/collect.ts'
import { waitingState } from '../telling/judge.ts'
import type { Quick } from './quickZones.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { BRAKING, DONE, OCCUPIED } from '../state/moves.ts'

/** The carrier stands in its zone since `restAt`, done and waiting. */
export function stand(line: Line, quick: Quick, carrier: number): void {
  const { collector, moves } = line
  const { zoneSeconds, carrierSeconds, stationSeconds } = collector
  const at = quick.restAt[carrier]!
  const zone = moves.carrierZone[carrier]!
  moves.carrierPhase[carrier] = DONE
  moves.carrierSince[carrier] = at
  const base = zone * ZONE_WIDTH
  zoneSeconds[base + collector.zoneState[zone]!]! += at - zoneSeconds[base + ZONE_SINCE]!
  zoneSeconds[base + ZONE_SINCE] = at
  collector.zoneState[zone] = Z_BLOCKED
  const row = carrier * CARRIER_WIDTH
  carrierSeconds[row + collector.carrierState[carrier]!]! += at - carrierSeconds[row + CARRIER_SINCE]!
  carrierSeconds[row + CARRIER_SINCE] = at
  collector.carrierState[carrier] = waitingState(line, carrier)
  const station = line.work.zoneStation[zone]!
  if (station === NONE) return
  const own = station * STATION_WIDTH
  stationSeconds[own + collector.stationState[station]!]! += at - stationSeconds[own + STATION_SINCE]!
  stationSeconds[own + STATION_SINCE] = at
  stationSeconds[own + BLOCKED_SINCE] = at
  collector.stationState[station] = S_BLOCKED
}

/** Makes a rest good whose instant was known. */
export function makeRest(line: Line, quick: Quick, carrier: number): void {
  const { moves } = line
  const zone = moves.carrierZone[carrier]!
  quick.restIsKnown[carrier] = 0
  quick.known--
  line.events++
  line.activity--
  moves.pathCarrier[moves.carrierPath[carrier]!] = NONE
  moves.zoneClaimant[zone] = NONE
  moves.zoneState[zone] = OCCUPIED
  stand(line, quick, carrier)
}

/** Gives the rest a timer after all. */
export function timeRest(line: Line, quick: Quick, carrier: number): void {
  const slot = line.slots.arrivalSlot + line.moves.carrierPath[carrier]!
  quick.restIsKnown[carrier] = 0
  quick.known--
  line.queue.times[slot] = quick.restAt[carrier]!
  line.queue.schedule(slot)
}

/** Gives the look that comes before the rest a timer after all. */
function timeLook(line: Line, quick: Quick, carrier: number): void {
  const slot = line.slots.arrivalSlot + line.moves.carrierPath[carrier]!
  quick.restIsKnown[carrier] = 0
  quick.known--
  line.queue.times[slot] = quick.lookAt[carrier]!
  line.queue.schedule(slot)
}

/** Makes what is known of the carrier's rest good as far as it is over by now, and gives what is to come a timer. */
export function settleRest(line: Line, quick: Quick, carrier: number): void {
  const { moves } = line
  const path = moves.carrierPath[carrier]!
  if (moves.pathLooks[path]! > 0) {
    if (quick.lookAt[carrier]! >= line.now) {
      timeLook(line, quick, carrier)
      return
    }
    // it has found no way on
    moves.pathLooks[path] = 0
    moves.carrierPhase[carrier] = BRAKING
    line.events++
  }
  if (quick.restAt[carrier]! <= line.now) makeRest(line, quick, carrier)
  else timeRest(line, quick, carrier)
}

/** The same for all carriers. */
export function settleRests(line: Line, quick: Quick): void {
  for (let carrier = 0; quick.known > 0; carrier++) if (quick.restIsKnown[carrier] === 1) settleRest(line, quick, carrier)
}
