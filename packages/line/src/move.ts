/** Moves along paths: when they may start, what they take with them, their ends, and how stops hold them. (MODEL.md §3) */
import { nextZoneTakes, startClear, waitFor } from './clear.ts'
import { drawInOrder } from './draw.ts'
import { SPEED } from './motion.ts'
import { operateIn, operateOut } from './operation.ts'
import { addTo, BRAKING, CLEAR_TIMED, DONE, type Line, LOOKING, MOVING, NONE, OCCUPIED, takeAt, VACATING } from './state.ts'
import { beginStay, dutyAhead } from './station.ts'
import { holdTimer, resumeTimer, startTimer } from './timer.ts'
import { AT_REST, BRAKE, MOVE_START, LOOK } from './trace.ts'
import { claim } from './zone.ts'

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
  if (line.trace !== null) line.trace.add(line.now, LOOK, zone, carrier, 0)
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
    if (line.trace !== null) line.trace.add(line.now, BRAKE, zone, carrier, 0)
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
