/** Moves into the store and out of it, and ends in it, at quick instants (quick.ts), as `startMove` of move.ts and `onStoreArrival` of store.ts have them. (MODEL.md §1, §3, §11) */
import { assert } from '@loopwright/kernel'
import { dutyAhead } from '../moves/dutyAhead.ts'
import { PACE_CLEAR, SPEED } from '../moves/motion.ts'
import { pathThatStarts, stopsAt } from '../moves/move.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { CLAIMED, CLEAR_KNOWN, CLEAR_TIMED, DONE, FREE, LOOK_FROM_REST, MOVING, VACATING } from '../state/moves.ts'
import { operateZone } from '../stops/operation.ts'
import { watchMove } from '../stops/safety.ts'
import { BLOCKED_SINCE, LONGEST_BLOCK, OCCUPIED_SECONDS, OCCUPIED_SINCE, STATION_WIDTH, ZONE_WIDTH } from '../telling/collect.ts'
import { waitingState } from '../telling/judge.ts'
import { CHANGE_AT } from '../telling/level.ts'
import { C_MOVING, S_BLOCKED, S_EXCHANGING, S_STARVED, Z_CLAIMED, Z_VACATING } from '../telling/states.ts'
import { leaveStore, queueInStore } from '../work/store.ts'
import { isAwaited } from './quickStart.ts'
import { INTO_STORE, OUT_OF_STORE, PLAIN_CLEAR, QUICK, type Quick, STOPS, STOPS_BY_CARRIER, WATCHED } from './quickZones.ts'
import { settleCarrier, settleStation, settleZone } from './settle.ts'

/** The carrier has come to the store, and leaves it again if it can. False: that is not for here, and nothing is done. */
export function endsInStore(line: Line, quick: Quick, carrier: number): boolean {
  const { graph, moves, store } = line
  if ((quick.flags[store]! & QUICK) === 0 || graph.manualStation[moves.carrierPath[carrier]!] !== NONE) return false
  line.events++
  line.activity--
  moves.carrierPath[carrier] = NONE
  moves.carrierPhase[carrier] = DONE
  moves.carrierSince[carrier] = line.now
  queueInStore(line, carrier)
  settleCarrier(line, carrier, waitingState(line, carrier))
  if (moves.zoneCarrier[store] !== carrier) return true
  const path = pathThatStarts(line, store, false)
  if (path !== NONE) startOutOfStore(line, quick, path)
  return true
}

/** Starts the move along a path into the store or out of it now. False: along another path, and nothing is done. */
export function startsAtStore(line: Line, quick: Quick, path: number, atSpeed: number): boolean {
  const flag = quick.pathFlags[path]! & (INTO_STORE + OUT_OF_STORE)
  if (flag === 0) return false
  if (flag === INTO_STORE) startIntoStore(line, quick, path, atSpeed)
  else startOutOfStore(line, quick, path)
  return true
}

/** Starts the move of the first carrier in the store along the path now. */
function startOutOfStore(line: Line, quick: Quick, path: number): void {
  const { collector, graph, moves, slots, store, work } = line
  const { times } = line.queue
  const to = graph.pathTo[path]!
  const carrier = moves.zoneCarrier[store]!
  const pathFlag = quick.pathFlags[path]!
  assert(moves.zoneState[to] === FREE && moves.zoneCarrier[to] === NONE, 'a move starts into a zone that is not free for its carrier')
  countStored(line, -1)
  collector.movesFromStore++
  collector.zoneSeconds[to * ZONE_WIDTH + OCCUPIED_SINCE] = line.now
  settleZone(line, to, Z_CLAIMED)
  settleCarrier(line, carrier, C_MOVING)
  const station = work.zoneStation[to]!
  if (station !== NONE && collector.stationState[station] === S_STARVED) settleStation(line, station, S_EXCHANGING)
  leaveStore(line)
  moves.zoneStarts[store]!++
  moves.zoneLastIn[to] = path
  moves.zoneWay[store] = NONE
  moves.zoneState[to] = CLAIMED
  moves.zoneClaimant[to] = carrier
  moves.zoneCarrier[to] = carrier
  moves.pathCarrier[path] = carrier
  moves.carrierZone[carrier] = to
  moves.carrierPath[carrier] = path
  moves.carrierPhase[carrier] = MOVING
  line.activity++
  const stops =
    (pathFlag & STOPS) > 0 || dutyAhead(line, carrier, to) || ((pathFlag & STOPS_BY_CARRIER) > 0 && stopsAt(line, path, carrier, to))
  const slot = slots.arrivalSlot + path
  moves.pathLooks[path] = stops ? 0 : LOOK_FROM_REST
  times[slot] = line.now + quick.paces.paceSeconds[quick.paces.pathPace[path]! + (stops ? 0 : SPEED)]!
  line.queue.schedule(slot)
  watch(line, pathFlag, path, carrier, slot)
  if (line.followsZones) operateZone(line, to, slot)
}

/** Starts the move along the path into the store now. */
function startIntoStore(line: Line, quick: Quick, path: number, atSpeed: number): void {
  const { collector, graph, moves, slots, store } = line
  const { times } = line.queue
  const { zoneSeconds } = collector
  const from = graph.pathFrom[path]!
  const carrier = moves.zoneCarrier[from]!
  const pathFlag = quick.pathFlags[path]!
  const pace = quick.paces.pathPace[path]!
  countStored(line, 1)
  zoneSeconds[from * ZONE_WIDTH + OCCUPIED_SECONDS]! += line.now - zoneSeconds[from * ZONE_WIDTH + OCCUPIED_SINCE]!
  collector.movesOut[from]!++
  settleZone(line, from, Z_VACATING)
  if (collector.carrierState[carrier] !== C_MOVING) settleCarrier(line, carrier, C_MOVING)
  leaveStation(line, from)
  if (from === collector.lapZone) collector.onLap(carrier)
  moves.zoneStarts[from]!++
  moves.zoneLastIn[store] = path
  moves.zoneWay[from] = NONE
  moves.leavingPath[from] = path
  moves.zoneState[from] = VACATING
  moves.zoneClaimant[from] = NONE
  moves.zoneCarrier[from] = NONE
  moves.carrierZone[carrier] = store
  moves.carrierPath[carrier] = path
  moves.carrierPhase[carrier] = MOVING
  moves.pathLooks[path] = 0
  line.activity++
  const slot = slots.storeSlot + carrier
  times[slot] = line.now + quick.paces.paceSeconds[pace + 2 * atSpeed]!
  line.queue.schedule(slot)
  watch(line, pathFlag, path, carrier, slot)
  const clearSlot = slots.clearSlot + from
  times[clearSlot] = line.now + quick.paces.paceSeconds[pace + PACE_CLEAR + atSpeed]!
  if ((pathFlag & PLAIN_CLEAR) > 0 && !isAwaited(line, quick, from, quick.flags[from]!)) {
    moves.zoneClearing[from] = CLEAR_KNOWN
  } else {
    moves.zoneClearing[from] = CLEAR_TIMED
    line.activity++
    line.queue.schedule(clearSlot)
  }
  if (line.followsZones) operateZone(line, from, clearSlot)
}

/** One more or less is in the store, or on its way into it. */
function countStored({ collector: { stored }, now }: Line, by: number): void {
  stored.sums[CHANGE_AT] = now
  stored.change(by)
}

/** The station, if there is one, is exchanging from now on. */
function leaveStation(line: Line, zone: number): void {
  const { collector, work } = line
  const station = work.zoneStation[zone]!
  if (station === NONE) return
  if (work.stationServed[station] === 1) {
    collector.cycles[station]!++
    work.stationServed[station] = 0
  }
  const is = collector.stationState[station]!
  if (is >= S_EXCHANGING) return
  settleStation(line, station, S_EXCHANGING)
  if (is !== S_BLOCKED) return
  const { stationSeconds } = collector
  const seconds = line.now - stationSeconds[station * STATION_WIDTH + BLOCKED_SINCE]!
  if (seconds > stationSeconds[station * STATION_WIDTH + LONGEST_BLOCK]!) stationSeconds[station * STATION_WIDTH + LONGEST_BLOCK] = seconds
}

function watch(line: Line, pathFlag: number, path: number, carrier: number, slot: number): void {
  if ((pathFlag & WATCHED) === 0) return
  line.draws.drawn[0] = line.queue.times[slot]! - line.now
  watchMove(line, path, carrier)
}
