/** Transfers: changes of position, to the way out while a carrier stands on it and back when it is clear. (MODEL.md §4) */
import { wake } from './moveHeap.ts'
import { operateChange } from '../stops/operation.ts'
import {
  addTo,
  BACK,
  BACK_PENDING,
  CHANGE_PENDING,
  CHANGING,
  type Line,
  NO_CHANGE,
  NONE,
  TO_WAY_IN,
  TO_WAY_OUT,
  TO_WAY_OUT_PENDING,
  takeAt,
} from '../instant/state.ts'
import { holdTimer, resumeTimer, startTimer } from '../build/timer.ts'
import { CHANGE_END, CHANGE_START } from '../telling/trace.ts'
import { wayNow } from './wayOut.ts'
import { becomeDone, becomeFree, claim } from './zone.ts'

/** The carrier has come to rest and its work here is released: the transfer turns to the way out, or there is nothing to change. */
export function leaveWork(line: Line, carrier: number, zone: number): void {
  if (line.zoneChanges[zone] === 0) {
    becomeDone(line, carrier, zone)
    return
  }
  line.carrierPhase[carrier] = CHANGE_PENDING
  line.zoneChange[zone] = TO_WAY_OUT_PENDING
  line.collector.touch(zone)
  addTo(line.changeList, zone)
}

/** The carrier has left the zone: the transfer turns back, or the zone is free at once, also where ways in of different positions let it rest. */
export function leaveClear(line: Line, zone: number): void {
  if (line.zoneChanges[zone] === 0 || line.zoneRests[zone] === 1 || line.backPosition[zone] === line.zonePosition[zone]) {
    becomeFree(line, zone)
    return
  }
  line.zoneChange[zone] = BACK_PENDING
  addTo(line.changeList, zone)
}

/** Fixes the way out where that is done once; whether the transfer stands otherwise than it needs. */
function mustTurn(line: Line, zone: number): boolean {
  const way = wayNow(line, zone, line.zoneCarrier[zone]!)
  if (line.zoneFixes[zone] === 1) line.zoneWay[zone] = way
  return way !== NONE && line.pathFromPosition[way] !== line.zonePosition[zone]
}

/** Starts the change in the lowest zone where one is due and nothing holds it. False: there is none. */
export function startFirstChange(line: Line): boolean {
  const list = line.changeList
  let best = -1
  let bestPlace = -1
  for (let place = 0; place < list.length; ) {
    const zone = list.items[place]!
    const change = line.zoneChange[zone]!
    if (change === TO_WAY_OUT_PENDING && !mustTurn(line, zone)) {
      takeAt(list, place)
      line.zoneChange[zone] = NO_CHANGE
      becomeDone(line, line.zoneCarrier[zone]!, zone)
      continue
    }
    if (line.zoneHeld[zone]! > 0 || (change !== TO_WAY_OUT_PENDING && change !== BACK_PENDING)) {
      takeAt(list, place)
      continue
    }
    if (best < 0 || zone < best) {
      best = zone
      bestPlace = place
    }
    place++
  }
  if (best < 0) return false
  takeAt(list, bestPlace)
  const out = line.zoneChange[best] === TO_WAY_OUT_PENDING
  line.zoneChange[best] = out ? TO_WAY_OUT : BACK
  if (out) line.carrierPhase[line.zoneCarrier[best]!] = CHANGING
  startChange(line, best, line.zoneCarrier[best]!, out ? 0 : 1)
  return true
}

export function startChange(line: Line, zone: number, carrier: number, detail: number): void {
  line.activity++
  line.queue.times[line.changeSlot + zone] = line.now + line.changeSeconds[2 * zone + 1 - line.zonePosition[zone]!]!
  startTimer(line, line.changeSlot + zone)
  operateChange(line, zone, 1)
  if (line.trace !== null) line.trace.add(line.now, CHANGE_START, zone, carrier, detail)
}

/** Whether the transfer at the end of the path rests in the other position than the path needs. */
export function mustTurnIn(line: Line, path: number): boolean {
  const to = line.pathTo[path]!
  return line.zoneRests[to] === 1 && line.zonePosition[to] !== line.pathToPosition[path]
}

/** A carrier at rest has won the transfer in the wrong position: it is set aside and changes, then the move starts. */
export function startTurnIn(line: Line, path: number): void {
  const to = line.pathTo[path]!
  const from = line.pathFrom[path]!
  const carrier = line.zoneCarrier[from]!
  claim(line, to, carrier)
  line.zoneWay[from] = path
  line.zoneChange[to] = TO_WAY_IN
  startChange(line, to, carrier, 2)
}

/** The transfer stands in its other position and changes no longer. */
export function endChange(line: Line, zone: number): void {
  line.zoneChange[zone] = NO_CHANGE
  line.zonePosition[zone] = 1 - line.zonePosition[zone]!
  operateChange(line, zone, 0)
}

export function onChangeEnd(line: Line, zone: number): void {
  const change = line.zoneChange[zone]!
  line.activity--
  endChange(line, zone)
  const carrier = change === TO_WAY_IN ? line.zoneClaimant[zone]! : line.zoneCarrier[zone]!
  if (line.trace !== null) line.trace.add(line.now, CHANGE_END, zone, carrier, change === TO_WAY_OUT ? 0 : change === BACK ? 1 : 2)
  if (change === TO_WAY_OUT) becomeDone(line, carrier, zone)
  else if (change === BACK) becomeFree(line, zone)
  else wake(line, line.carrierZone[carrier]!)
}

/** A stop now holds the zone: its change stands still. */
export function holdChange(line: Line, zone: number): void {
  holdTimer(line, line.changeSlot + zone)
  operateChange(line, zone, 0)
}

/** Nothing holds the zone any longer: its change goes on, or one that was due may start. */
export function resumeChange(line: Line, zone: number): void {
  const change = line.zoneChange[zone]!
  if (change === TO_WAY_OUT || change === BACK || change === TO_WAY_IN) {
    resumeTimer(line, line.changeSlot + zone)
    operateChange(line, zone, 1)
  } else if (change !== NO_CHANGE) addTo(line.changeList, zone)
}
