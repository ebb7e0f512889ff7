/** Moves along paths: when they may start, what they take with them, and their ends; how stops hold them is in heldPath.ts. (MODEL.md §3) */

import { nextZoneTakes, startClear, waitFor } from './clear.ts'
import { drawInOrder } from '../work/draw.ts'
import { dutyAhead } from './dutyAhead.ts'
import { firstWithRightOfWay } from './merge.ts'
import { SPEED } from './motion.ts'
import { takeFirst, wake } from './moveHeap.ts'
import { operateIn, operateOut } from '../stops/operation.ts'
import { beginHandling, endHandling, isManned } from '../operators/operators.ts'
import { watchMove } from '../stops/safety.ts'
import {
  addTo,
  BRAKING,
  DONE,
  FIRST_FREE,
  type Line,
  LOOKING,
  LOOKS,
  MOVING,
  NONE,
  OCCUPIED,
  STOPS_ALWAYS,
  STOPS_NEVER,
  takeAt,
  VACATING,
} from '../instant/state.ts'
import { beginStay } from '../work/station.ts'
import { takeFromStore } from '../work/store.ts'
import { startTimer } from '../build/timer.ts'
import { AT_REST, BRAKE, LOOK, MOVE_START } from '../telling/trace.ts'
import { mustTurnIn, startTurnIn } from './transfer.ts'
import { firstWay, wayNow } from './wayOut.ts'
import { claim } from './zone.ts'

/** Whether a carrier at rest and done, or one that looks, can start along the path now. */
function canTake(line: Line, path: number, carrier: number, asIfNoStop: boolean): boolean {
  if (!asIfNoStop && line.zoneHeld[line.pathTo[path]!]! > 0) return false
  const isLooking = line.carrierPhase[carrier] === LOOKING
  if (isLooking && line.manualStation[path] !== NONE) return false
  if (nextZoneTakes(line, path, carrier)) return !isLooking || line.isLoop || !mustTurnIn(line, path)
  if (!isLooking) waitFor(line, path)
  return false
}

/** The path along which the carrier of the place (the first one in the store) can start now; NONE. `asIfNoStop`: were there no stop. */
export function pathThatStarts(line: Line, place: number, asIfNoStop: boolean): number {
  const carrier = line.zoneCarrier[place]!
  if (carrier === NONE) return NONE
  const phase = line.carrierPhase[carrier]!
  if (phase !== DONE && phase !== LOOKING) return NONE
  if (!asIfNoStop && line.zoneHeld[place]! > 0) return NONE
  let way = line.onlyOut[place]!
  if (way === NONE) {
    if (line.divert[place] === FIRST_FREE && line.zoneWay[place] === NONE) return firstWay(line, place, carrier, canTake, asIfNoStop)
    way = wayNow(line, place, carrier)
  }
  return way !== NONE && canTake(line, way, carrier, asIfNoStop) ? way : NONE
}

/** Whether a move by hand has its operator, there and not on a break; others need none. */
function hasItsOperator(line: Line, path: number): boolean {
  return line.manualStation[path] === NONE || (line.breaksNow === 0 && isManned(line, path))
}

function canTakeByDrive(line: Line, path: number, carrier: number, asIfNoStop: boolean): boolean {
  return line.manualStation[path] === NONE && canTake(line, path, carrier, asIfNoStop)
}

/** Where a carrier takes the first way that can start, and nobody is there for the one by hand: the first that the drive can start; NONE. */
export function drivenPathThatStarts(line: Line, place: number, asIfNoStop: boolean): number {
  if (line.onlyOut[place] !== NONE || line.divert[place] !== FIRST_FREE || line.zoneWay[place] !== NONE) return NONE
  return firstWay(line, place, line.zoneCarrier[place]!, canTakeByDrive, asIfNoStop)
}

/** Starts the first move that can start: longest waiting, then lower path index; right of way where there are merges. False: there is none. */
export function startFirstMove(line: Line): boolean {
  return line.isLoop ? startFirstOfLoop(line) : startFirstOfGraph(line)
}

function startFirstOfLoop(line: Line): boolean {
  while (line.moveList.length > 0) {
    const path = pathThatStarts(line, takeFirst(line), false)
    if (path === NONE) continue
    startMove(line, path)
    return true
  }
  return false
}

function startFirstOfGraph(line: Line): boolean {
  const list = line.moveList
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
    if (line.hasMerges) line.startPath[from] = path
    const since = line.carrierSince[line.zoneCarrier[from]!]!
    if (best === NONE || since < bestSince || (since === bestSince && path < best)) {
      best = path
      bestPlace = place
      bestSince = since
    }
    place++
  }
  if (best === NONE) return false
  if (line.hasMerges) {
    bestPlace = firstWithRightOfWay(line)
    best = line.startPath[list.items[bestPlace]!]!
  }
  takeAt(list, bestPlace)
  if (mustTurnIn(line, best)) startTurnIn(line, best)
  else startMove(line, best)
  return true
}

function startMove(line: Line, path: number): void {
  const from = line.pathFrom[path]!
  const to = line.pathTo[path]!
  const carrier = line.zoneCarrier[from]!
  const { now, queue, store } = line
  const atSpeed = line.carrierPhase[carrier] === LOOKING ? 1 : 0
  if (atSpeed === 1) endArrival(line, line.carrierPath[carrier]!)
  line.collector.onMoveStart(from, to, carrier)
  claim(line, to, carrier)
  if (!line.isLoop) {
    line.zoneStarts[from]!++
    line.zoneLastIn[to] = path
    line.zoneWay[from] = NONE
    if (from !== store) line.leavingPath[from] = path
  }
  line.carrierZone[carrier] = to
  line.carrierPath[carrier] = path
  line.carrierPhase[carrier] = MOVING
  line.activity++
  if (from === store) takeFromStore(line)
  else {
    const station = line.zoneStation[from]!
    if (station !== NONE) line.stationServed[station] = 0
    line.zoneState[from] = VACATING
    line.zoneClaimant[from] = NONE
    line.zoneCarrier[from] = NONE
  }
  if (line.trace !== null) line.trace.add(now, MOVE_START, path, carrier, atSpeed)

  const slot = to === store ? line.storeSlot + carrier : line.arrivalSlot + path
  const given = line.moveSampler[path]!
  const pace = line.pathPace[path]! + 2 * atSpeed
  line.pathLooks[path] = 0
  if (given !== NONE) {
    drawInOrder(line, given, line.moveStream[path]!)
    queue.times[slot] = now + line.drawn[0]!
  } else if (stopsAt(line, path, carrier, to)) {
    queue.times[slot] = now + line.paceSeconds[pace]!
  } else {
    line.pathLooks[path] = LOOKS + atSpeed
    queue.times[slot] = now + line.paceSeconds[pace + SPEED]!
  }
  startTimer(line, slot)
  if (line.hasSafety) {
    line.drawn[0] = queue.times[slot]! - now
    watchMove(line, path, carrier)
  }
  if (line.manualStation[path] !== NONE) beginHandling(line, path, carrier)
  if (to === store) line.collector.judgeCarrier(carrier)
  else {
    line.zoneCarrier[to] = carrier
    line.pathCarrier[path] = carrier
    operateIn(line, path, 1)
  }
  if (from === store) return
  startClear(line, path, atSpeed, slot)
  operateOut(line, path, 1)
}

/** Whether the carrier will stop at the end of the path: work, a change of position, no way out, the store. (MODEL.md §3) */
export function stopsAt(line: Line, path: number, carrier: number, to: number): boolean {
  const stops = line.pathStops[path]!
  if (stops === STOPS_ALWAYS || dutyAhead(line, carrier, to)) return true
  if (stops === STOPS_NEVER) return false
  const way = wayNow(line, to, carrier)
  return (
    way === NONE ||
    line.manualStation[way] !== NONE ||
    (line.zoneChanges[to] === 1 && line.pathFromPosition[way] !== line.pathToPosition[path])
  )
}

/** The carrier has come to the end of its move: at rest, or at the point where it looks whether it can go on. */
export function onArrival(line: Line, path: number): void {
  const carrier = line.pathCarrier[path]!
  const zone = line.pathTo[path]!
  if (line.pathLooks[path] === 0) {
    comeToRest(line, path)
    return
  }
  line.carrierPhase[carrier] = LOOKING
  line.carrierSince[carrier] = line.now
  if (line.trace !== null) line.trace.add(line.now, LOOK, zone, carrier, 0)
  addTo(line.lookList, carrier)
  wake(line, zone)
}

/** Whether a carrier that looks at the end of the path would be at rest at once. */
export function stopsAtLook({ paceSeconds, pathPace, pathLooks }: Line, path: number): boolean {
  const pace = pathPace[path]! + 2 * (pathLooks[path]! - LOOKS)
  return paceSeconds[pace] === paceSeconds[pace + SPEED]
}

/** Those that looked and could not go on begin to brake. False: there was none. */
export function brakeAll(line: Line): boolean {
  const list = line.lookList
  let any = false
  while (list.length > 0) {
    const carrier = list.items[list.length - 1]!
    takeAt(list, list.length - 1)
    if (line.carrierPhase[carrier] !== LOOKING) continue
    any = true
    const zone = line.carrierZone[carrier]!
    const path = line.carrierPath[carrier]!
    line.carrierPhase[carrier] = BRAKING
    const pace = line.pathPace[path]! + 2 * (line.pathLooks[path]! - LOOKS)
    const brake = line.paceSeconds[pace]! - line.paceSeconds[pace + SPEED]!
    line.pathLooks[path] = 0
    if (line.trace !== null) line.trace.add(line.now, BRAKE, zone, carrier, 0)
    if (brake === 0) {
      comeToRest(line, path)
    } else if (line.pathHeld[path] === 1) {
      line.left[line.arrivalSlot + path] = brake
      line.isHeldBack[line.arrivalSlot + path] = 1
    } else {
      line.queue.times[line.arrivalSlot + path] = line.now + brake
      startTimer(line, line.arrivalSlot + path)
    }
  }
  return any
}

function endArrival(line: Line, path: number): void {
  if (line.manualStation[path] !== NONE) endHandling(line, path, line.pathCarrier[path]!)
  line.pathCarrier[path] = NONE
  line.activity--
  operateIn(line, path, 0)
}

function comeToRest(line: Line, path: number): void {
  const carrier = line.pathCarrier[path]!
  const zone = line.pathTo[path]!
  endArrival(line, path)
  line.zoneState[zone] = OCCUPIED
  line.zoneClaimant[zone] = NONE
  line.collector.touch(zone)
  if (line.trace !== null) line.trace.add(line.now, AT_REST, zone, carrier, 0)
  beginStay(line, carrier, zone)
}
