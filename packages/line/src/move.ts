/** Moves along paths: when they may start, what they take with them, their ends, and how stops hold them. (MODEL.md §3) */
import { drawInOrder } from './draw.ts'
import { operateIn, operateOut } from './operation.ts'
import { SPEED } from './motion.ts'
import { beginStay, dutyAhead } from './station.ts'
import {
  addTo,
  BRAKING,
  CLAIMED,
  CLEAR_KNOWN,
  CLEAR_NOW,
  CLEAR_TIMED,
  DONE,
  FREE,
  type Line,
  LOOKING,
  MOVING,
  NONE,
  OCCUPIED,
  SAME_AS_MOVE,
  takeAt,
  VACATING,
} from './state.ts'
import { holdTimer, resumeTimer, startTimer } from './timer.ts'
import { AT_REST, BRAKE, CLEAR, MOVE_START, PASS } from './trace.ts'
import { leaveClear } from './transfer.ts'

/** Whether the next zone takes this carrier: free (and behind exit-clear transfers all up to the next place to stand), or set aside for it. */
export function nextZoneTakes(line: Line, path: number, carrier: number): boolean {
  let zone = line.zoneNext[path]!
  if (line.zoneState[zone] === CLAIMED) return line.zoneClaimant[zone] === carrier && line.zoneCarrier[zone] === NONE
  while (isFree(line, zone)) {
    if (line.exitClear[zone] === 0) return true
    zone = line.zoneNext[zone]!
  }
  return false
}

/** Whether the zone is free now; a clear without a timer that is over by now is made good here. */
function isFree(line: Line, zone: number): boolean {
  if (line.zoneState[zone] === FREE) return true
  if (line.pathClearing[zone] !== CLEAR_KNOWN || line.clearAt[zone]! > line.now) return false
  makeClear(line, zone)
  return true
}

/** Makes a clear good that is over by now: nobody waited for it, so that only the zone and what is told of it change. */
export function makeClear(line: Line, zone: number): void {
  line.pathClearing[zone] = CLEAR_NOW
  line.zoneState[zone] = FREE
  line.events++
  line.collector.onLateClear(zone)
}

/** Makes good every clear that is over by `line.now`. */
export function makeAllClear(line: Line): void {
  for (let zone = 0; zone < line.zones; zone++) {
    if (line.pathClearing[zone] === CLEAR_KNOWN && line.clearAt[zone]! <= line.now) makeClear(line, zone)
  }
}

/** Gives the clear of the zone a timer: somebody waits for it. False: it has none to come. */
export function timeClear(line: Line, zone: number): boolean {
  if (line.pathClearing[zone] !== CLEAR_KNOWN) return false
  line.pathClearing[zone] = CLEAR_TIMED
  line.activity++
  line.queue.times[line.clearSlot + zone] = line.clearAt[zone]!
  startTimer(line, line.clearSlot + zone)
  return true
}

/** A carrier waits to move along the path: if what it waits for is a clear without a timer, that gets one. */
function waitFor(line: Line, path: number): void {
  let zone = line.zoneNext[path]!
  while (line.zoneState[zone] === FREE && line.exitClear[zone] === 1) zone = line.zoneNext[zone]!
  timeClear(line, zone)
}

/** Whether a carrier stands before the zone, or before exit-clear transfers in front of it, and waits for it or looks whether it can go on. */
function isWaitedFor(line: Line, zone: number): boolean {
  let before = line.zonePrevious[zone]!
  while (before !== zone) {
    const carrier = line.zoneCarrier[before]!
    if (carrier !== NONE) return line.carrierPhase[carrier] === DONE || line.carrierPhase[carrier] === LOOKING
    if (line.exitClear[before] === 0) return false
    before = line.zonePrevious[before]!
  }
  return false
}

function canStart(line: Line, path: number): boolean {
  const carrier = line.zoneCarrier[path]!
  if (carrier === NONE) return false
  const phase = line.carrierPhase[carrier]!
  if (phase !== DONE && phase !== LOOKING) return false
  if (line.zoneHeld[path]! > 0 || line.zoneHeld[line.zoneNext[path]!]! > 0) return false
  if (nextZoneTakes(line, path, carrier)) return true
  if (phase === DONE) waitFor(line, path)
  return false
}

/** Starts the first move that can start: longest waiting, then lower path index. False: there is none. */
export function startFirstMove(line: Line): boolean {
  const list = line.moveList
  let best = NONE
  let bestPlace = NONE
  let bestSince = 0
  for (let place = 0; place < list.length; ) {
    const path = list.items[place]!
    if (!canStart(line, path)) {
      takeAt(list, place)
      continue
    }
    const since = line.carrierSince[line.zoneCarrier[path]!]!
    if (best === NONE || since < bestSince || (since === bestSince && path < best)) {
      best = path
      bestPlace = place
      bestSince = since
    }
    place++
  }
  if (best === NONE) return false
  takeAt(list, bestPlace)
  startMove(line, best)
  return true
}

function startMove(line: Line, path: number): void {
  const from = path
  const to = line.zoneNext[path]!
  const carrier = line.zoneCarrier[from]!
  const { now, queue } = line
  const atSpeed = line.carrierPhase[carrier] === LOOKING ? 1 : 0
  if (atSpeed === 1) endArrival(line, line.zonePrevious[from]!)
  line.collector.onMoveStart(from, to, carrier)
  line.zoneState[from] = VACATING
  line.zoneClaimant[from] = NONE
  line.zoneCarrier[from] = NONE
  claim(line, to, carrier)
  line.zoneCarrier[to] = carrier
  line.carrierZone[carrier] = to
  line.carrierPhase[carrier] = MOVING
  line.pathCarrier[path] = carrier
  line.activity++
  if (line.trace !== null) line.trace.add(now, MOVE_START, path, carrier, atSpeed)

  const given = line.moveSampler[path]!
  if (given !== NONE) {
    line.pathLooks[path] = 0
    drawInOrder(line, given, line.moveStream[path]!)
    queue.times[line.arrivalSlot + path] = now + line.drawn[0]!
  } else {
    const times = 4 * path + 2 * atSpeed
    const toRest = line.moveSeconds[times]!
    if (line.zoneChanges[to] === 1 || dutyAhead(line, carrier, to)) {
      line.pathLooks[path] = 0
      queue.times[line.arrivalSlot + path] = now + toRest
    } else {
      const look = line.moveSeconds[times + SPEED]!
      line.pathLooks[path] = 1
      line.pathBrake[path] = toRest - look
      queue.times[line.arrivalSlot + path] = now + look
    }
  }
  startTimer(line, line.arrivalSlot + path)
  startClear(line, path, atSpeed)
  operateIn(line, path, 1)
  operateOut(line, path, 1)
}

function startClear(line: Line, path: number, atSpeed: number): void {
  const { now, queue } = line
  const slot = line.clearSlot + path
  const given = line.clearSampler[path]!
  if (given === SAME_AS_MOVE) queue.times[slot] = queue.times[line.arrivalSlot + path]!
  else if (given === NONE) queue.times[slot] = now + line.clearSeconds[2 * path + atSpeed]!
  else {
    drawInOrder(line, given, line.clearStream[path]!)
    queue.times[slot] = now + line.drawn[0]!
  }
  if (line.clearIsPlain[path] === 1 && line.trace === null && !isWaitedFor(line, path)) {
    line.pathClearing[path] = CLEAR_KNOWN
    line.clearAt[path] = queue.times[slot]!
    return
  }
  line.pathClearing[path] = CLEAR_TIMED
  line.activity++
  startTimer(line, slot)
}

/** Claims the zone, and behind exit-clear transfers the zones up to the next place to stand; those are only set aside. */
function claim(line: Line, to: number, carrier: number): void {
  let zone = to
  while (line.zoneState[zone] === FREE) {
    line.zoneState[zone] = CLAIMED
    line.zoneClaimant[zone] = carrier
    line.collector.touch(zone)
    if (line.exitClear[zone] === 0) return
    zone = line.zoneNext[zone]!
  }
}

/** The carrier has come to the end of its move: at rest, or at the point where it looks whether it can go on. */
export function onArrival(line: Line, path: number): void {
  const carrier = line.pathCarrier[path]!
  const zone = line.zoneNext[path]!
  if (line.pathLooks[path] === 0) {
    comeToRest(line, path)
    return
  }
  line.carrierPhase[carrier] = LOOKING
  line.carrierSince[carrier] = line.now
  if (line.trace !== null) line.trace.add(line.now, PASS, zone, carrier, 0)
  addTo(line.lookList, carrier)
  addTo(line.moveList, zone)
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
    const path = line.zonePrevious[zone]!
    line.carrierPhase[carrier] = BRAKING
    line.pathLooks[path] = 0
    const brake = line.pathBrake[path]!
    if (brake === 0) {
      comeToRest(line, path)
    } else if (line.pathHeld[path] === 1) {
      line.left[line.arrivalSlot + path] = brake
      line.isHeldBack[line.arrivalSlot + path] = 1
    } else {
      line.queue.times[line.arrivalSlot + path] = line.now + brake
      startTimer(line, line.arrivalSlot + path)
    }
    if (line.trace !== null) line.trace.add(line.now, BRAKE, zone, carrier, 0)
  }
  return any
}

function endArrival(line: Line, path: number): void {
  line.pathCarrier[path] = NONE
  line.activity--
  operateIn(line, path, 0)
}

function comeToRest(line: Line, path: number): void {
  const carrier = line.pathCarrier[path]!
  const zone = line.zoneNext[path]!
  endArrival(line, path)
  line.zoneState[zone] = OCCUPIED
  line.zoneClaimant[zone] = NONE
  line.collector.touch(zone)
  if (line.trace !== null) line.trace.add(line.now, AT_REST, zone, carrier, 0)
  beginStay(line, carrier, zone)
}

/** Nothing is left to do here: the carrier waits to move on. */
export function becomeDone(line: Line, carrier: number, zone: number): void {
  line.carrierPhase[carrier] = DONE
  line.carrierSince[carrier] = line.now
  line.collector.touch(zone)
  addTo(line.moveList, zone)
}

/** The tail has left the zone and the control has seen it. */
export function onClear(line: Line, path: number): void {
  line.pathClearing[path] = CLEAR_NOW
  line.activity--
  operateOut(line, path, 0)
  if (line.trace !== null) line.trace.add(line.now, CLEAR, path, NONE, 0)
  leaveClear(line, path)
}

/** The zone turns free: whoever waits for it may try. */
export function becomeFree(line: Line, zone: number): void {
  line.zoneState[zone] = FREE
  line.collector.touch(zone)
  let before = line.zonePrevious[zone]!
  addTo(line.moveList, before)
  while (line.exitClear[before] === 1 && before !== zone) {
    before = line.zonePrevious[before]!
    addTo(line.moveList, before)
  }
}

/** A stop now holds one end of the path: what is under way on it stands still. */
export function holdPath(line: Line, path: number): void {
  if (line.pathHeld[path] === 1) return
  line.pathHeld[path] = 1
  holdTimer(line, line.arrivalSlot + path)
  holdTimer(line, line.clearSlot + path)
  operateIn(line, path, 0)
  operateOut(line, path, 0)
}

/** No stop holds the path any longer: what was under way goes on. */
export function resumePath(line: Line, path: number): void {
  if (line.pathHeld[path] === 0) return
  line.pathHeld[path] = 0
  resumeTimer(line, line.arrivalSlot + path)
  resumeTimer(line, line.clearSlot + path)
  if (line.pathCarrier[path] !== NONE) operateIn(line, path, 1)
  if (line.pathClearing[path] === CLEAR_TIMED) operateOut(line, path, 1)
  addTo(line.moveList, path)
}
