/** Moves along paths: when they may start, what they take with them, and their ends; how stops hold them is in heldPath.ts. (MODEL.md §3) */

import { assert } from '@loopwright/kernel'
import { nextZoneTakes, startClear, waitFor } from './clear.ts'
import { drawInOrder } from '../work/draw.ts'
import { dutyAhead } from './dutyAhead.ts'
import { firstWithRightOfWay } from './merge.ts'
import { SPEED } from './motion.ts'
import { takeFirst, wake } from './moveHeap.ts'
import { operateZone } from '../stops/operation.ts'
import { beginHandling, endHandling, isManned } from '../operators/operators.ts'
import { watchMove } from '../stops/safety.ts'
import { FIRST_FREE, STOPS_ALWAYS, STOPS_NEVER } from '../state/graph.ts'
import type { Line } from '../state/line.ts'
import { addTo, NONE, takeAt } from '../state/lists.ts'
import { CLAIMED, BRAKING, DONE, LOOKING, LOOK_FROM_REST, MOVING, OCCUPIED, VACATING } from '../state/moves.ts'
import { beginStay } from '../work/station.ts'
import { takeFromStore } from '../work/store.ts'
import { startTimer } from '../state/timer.ts'
import { AT_REST, BRAKE, LOOK, MOVE_START } from '../telling/trace.ts'
import { mustTurnIn, startTurnIn } from './transfer.ts'
import { firstWay, wayNow } from './wayOut.ts'
import { claim } from './zone.ts'

/** Whether a carrier at rest and done, or one that looks, can start along the path now. */
function canTake(line: Line, path: number, carrier: number, asIfNoStop: boolean): boolean {
  const { graph } = line
  if (!asIfNoStop && line.stops.zoneHeld[graph.pathTo[path]!]! > 0) return false
  const isLooking = line.moves.carrierPhase[carrier] === LOOKING
  if (isLooking && graph.manualStation[path] !== NONE) return false
  if (nextZoneTakes(line, path, carrier)) return !isLooking || graph.isLoop || !mustTurnIn(line, path)
  if (!isLooking) waitFor(line, path)
  return false
}

/** The path along which the carrier of the place (the first one in the store) can start now; NONE. `asIfNoStop`: were there no stop. */
export function pathThatStarts(line: Line, place: number, asIfNoStop: boolean): number {
  const { moves, graph } = line
  const carrier = moves.zoneCarrier[place]!
  if (carrier === NONE) return NONE
  const phase = moves.carrierPhase[carrier]!
  if (phase !== DONE && phase !== LOOKING) return NONE
  if (!asIfNoStop && line.stops.zoneHeld[place]! > 0) return NONE
  let way = graph.onlyOut[place]!
  if (way === NONE) {
    if (graph.divert[place] === FIRST_FREE && moves.zoneWay[place] === NONE) return firstWay(line, place, carrier, canTake, asIfNoStop)
    way = wayNow(line, place, carrier)
  }
  return way !== NONE && canTake(line, way, carrier, asIfNoStop) ? way : NONE
}

/** Whether a move by hand has its operator, there and not on a break; others need none. */
function hasItsOperator(line: Line, path: number): boolean {
  return line.graph.manualStation[path] === NONE || (line.stops.breaksNow === 0 && isManned(line, path))
}

function canTakeByDrive(line: Line, path: number, carrier: number, asIfNoStop: boolean): boolean {
  return line.graph.manualStation[path] === NONE && canTake(line, path, carrier, asIfNoStop)
}

/** Where a carrier takes the first way that can start, and nobody is there for the one by hand: the first that the drive can start; NONE. */
export function drivenPathThatStarts(line: Line, place: number, asIfNoStop: boolean): number {
  const { graph, moves } = line
  if (graph.onlyOut[place] !== NONE || graph.divert[place] !== FIRST_FREE || moves.zoneWay[place] !== NONE) return NONE
  return firstWay(line, place, moves.zoneCarrier[place]!, canTakeByDrive, asIfNoStop)
}

/** Starts the first move that can start: longest waiting, then lower path index; right of way where there are merges. False: there is none. */
export function startFirstMove(line: Line): boolean {
  return line.graph.isLoop ? startFirstOfLoop(line) : startFirstOfGraph(line)
}

function startFirstOfLoop(line: Line): boolean {
  while (line.moves.moveList.length > 0) {
    const path = pathThatStarts(line, takeFirst(line), false)
    if (path === NONE) continue
    startMove(line, path)
    return true
  }
  return false
}

function startFirstOfGraph(line: Line): boolean {
  const { moves, graph } = line
  const list = moves.moveList
  let best = NONE
  let bestPlace = NONE
  let bestSince = 0
  for (let place = 0; place < list.length; ) {
    const from = list.items[place]!
    let path = pathThatStarts(line, from, false)
    if (path !== NONE && !hasItsOperator(line, path)) path = drivenPathThatStarts(line, from, false)
    if (path === NONE) {
      takeAt(list, place)
      continue
    }
    if (graph.hasMerges) moves.startPath[from] = path
    const since = moves.carrierSince[moves.zoneCarrier[from]!]!
    if (best === NONE || since < bestSince || (since === bestSince && path < best)) {
      best = path
      bestPlace = place
      bestSince = since
    }
    place++
  }
  if (best === NONE) return false
  if (graph.hasMerges) {
    bestPlace = firstWithRightOfWay(line)
    best = moves.startPath[list.items[bestPlace]!]!
  }
  takeAt(list, bestPlace)
  if (mustTurnIn(line, best)) startTurnIn(line, best)
  else startMove(line, best)
  return true
}

function startMove(line: Line, path: number): void {
  const { graph, moves, work, slots, draws } = line
  const from = graph.pathFrom[path]!
  const to = graph.pathTo[path]!
  const carrier = moves.zoneCarrier[from]!
  const { now, queue, store } = line
  const phase = moves.carrierPhase[carrier]!
  assert(phase === DONE || phase === LOOKING, 'a move starts with a carrier that neither waits nor looks')
  const atSpeed = phase === LOOKING ? 1 : 0
  if (atSpeed === 1) endArrival(line, moves.carrierPath[carrier]!)
  line.collector.onMoveStart(from, to, carrier)
  claim(line, to, carrier)
  assert(
    to === store || (moves.zoneState[to] === CLAIMED && moves.zoneClaimant[to] === carrier && moves.zoneCarrier[to] === NONE),
    'a move starts into a zone that is not set aside for its carrier',
  )
  if (!graph.isLoop) {
    moves.zoneStarts[from]!++
    moves.zoneLastIn[to] = path
    moves.zoneWay[from] = NONE
    if (from !== store) moves.leavingPath[from] = path
  }
  moves.carrierZone[carrier] = to
  moves.carrierPath[carrier] = path
  moves.carrierPhase[carrier] = MOVING
  line.activity++
  if (from === store) takeFromStore(line)
  else {
    const station = work.zoneStation[from]!
    if (station !== NONE) work.stationServed[station] = 0
    moves.zoneState[from] = VACATING
    moves.zoneClaimant[from] = NONE
    moves.zoneCarrier[from] = NONE
  }
  if (line.trace !== null) line.trace.add(now, MOVE_START, path, carrier, atSpeed)

  const slot = to === store ? slots.storeSlot + carrier : slots.arrivalSlot + path
  const given = moves.moveSampler[path]!
  const pace = moves.pathPace[path]! + 2 * atSpeed
  moves.pathLooks[path] = 0
  if (given !== NONE) {
    drawInOrder(line, given, moves.moveStream[path]!)
    queue.times[slot] = now + draws.drawn[0]!
  } else if (stopsAt(line, path, carrier, to)) {
    queue.times[slot] = now + moves.paceSeconds[pace]!
  } else {
    moves.pathLooks[path] = LOOK_FROM_REST + atSpeed
    queue.times[slot] = now + moves.paceSeconds[pace + SPEED]!
  }
  startTimer(line, slot)
  if (line.hasSafety) {
    draws.drawn[0] = queue.times[slot]! - now
    watchMove(line, path, carrier)
  }
  if (graph.manualStation[path] !== NONE) beginHandling(line, path, carrier)
  if (to === store) line.collector.judgeCarrier(carrier)
  else {
    moves.zoneCarrier[to] = carrier
    moves.pathCarrier[path] = carrier
    if (line.followsZones) operateZone(line, to, slot)
  }
  if (from === store) return
  startClear(line, path, atSpeed, slot)
  if (line.followsZones) operateZone(line, from, slots.clearSlot + from)
}

/** Whether the carrier will stop at the end of the path: work, a change of position, no way out, the store. (MODEL.md §3) */
export function stopsAt(line: Line, path: number, carrier: number, to: number): boolean {
  const { graph, transfers } = line
  const stops = graph.pathStops[path]!
  if (stops === STOPS_ALWAYS || dutyAhead(line, carrier, to)) return true
  if (stops === STOPS_NEVER) return false
  const way = wayNow(line, to, carrier)
  return (
    way === NONE ||
    graph.manualStation[way] !== NONE ||
    (transfers.zoneChanges[to] === 1 && transfers.pathFromPosition[way] !== transfers.pathToPosition[path])
  )
}

/** The carrier has come to the end of its move: at rest, or at the point where it looks whether it can go on. */
export function onArrival(line: Line, path: number): void {
  const { moves } = line
  const carrier = moves.pathCarrier[path]!
  const zone = line.graph.pathTo[path]!
  if (moves.pathLooks[path] === 0) {
    comeToRest(line, path)
    return
  }
  moves.carrierPhase[carrier] = LOOKING
  moves.carrierSince[carrier] = line.now
  if (line.trace !== null) line.trace.add(line.now, LOOK, zone, carrier, 0)
  addTo(moves.lookList, carrier)
  wake(line, zone)
}

/** Whether a carrier that looks at the end of the path would be at rest at once. */
export function stopsAtLook({ moves: { paceSeconds, pathPace, pathLooks } }: Line, path: number): boolean {
  const pace = pathPace[path]! + 2 * (pathLooks[path]! - LOOK_FROM_REST)
  return paceSeconds[pace] === paceSeconds[pace + SPEED]
}

/** Those that looked and could not go on begin to brake. False: there was none. */
export function brakeAll(line: Line): boolean {
  const { moves, slots } = line
  const list = moves.lookList
  let any = false
  while (list.length > 0) {
    const carrier = list.items[list.length - 1]!
    takeAt(list, list.length - 1)
    if (moves.carrierPhase[carrier] !== LOOKING) continue
    any = true
    const zone = moves.carrierZone[carrier]!
    const path = moves.carrierPath[carrier]!
    moves.carrierPhase[carrier] = BRAKING
    const pace = moves.pathPace[path]! + 2 * (moves.pathLooks[path]! - LOOK_FROM_REST)
    const brake = moves.paceSeconds[pace]! - moves.paceSeconds[pace + SPEED]!
    moves.pathLooks[path] = 0
    if (line.trace !== null) line.trace.add(line.now, BRAKE, zone, carrier, 0)
    if (brake === 0) {
      comeToRest(line, path)
    } else if (line.stops.pathHeld[path] === 1) {
      slots.left[slots.arrivalSlot + path] = brake
      slots.isHeldBack[slots.arrivalSlot + path] = 1
    } else {
      line.queue.times[slots.arrivalSlot + path] = line.now + brake
      startTimer(line, slots.arrivalSlot + path)
      if (line.followsZones) operateZone(line, zone, slots.arrivalSlot + path)
    }
  }
  return any
}

function endArrival(line: Line, path: number): void {
  const { moves } = line
  if (line.graph.manualStation[path] !== NONE) endHandling(line, path, moves.pathCarrier[path]!)
  moves.pathCarrier[path] = NONE
  line.activity--
}

function comeToRest(line: Line, path: number): void {
  const { moves } = line
  const carrier = moves.pathCarrier[path]!
  const zone = line.graph.pathTo[path]!
  assert(
    moves.zoneState[zone] === CLAIMED && moves.zoneClaimant[zone] === carrier && moves.zoneCarrier[zone] === carrier,
    'a carrier comes to rest in a zone that was not claimed for it',
  )
  endArrival(line, path)
  moves.zoneState[zone] = OCCUPIED
  moves.zoneClaimant[zone] = NONE
  line.collector.touch(zone)
  if (line.trace !== null) line.trace.add(line.now, AT_REST, zone, carrier, 0)
  beginStay(line, carrier, zone)
}
