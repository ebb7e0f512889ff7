/** Transfers: changes of position, to the way out while a carrier stands on it and back when it is clear. (MODEL.md §4) */
import { operateChange } from './operation.ts'
import {
  addTo,
  BACK,
  BACK_PENDING,
  CHANGE_PENDING,
  CHANGING,
  type Line,
  NO_CHANGE,
  TO_WAY_OUT,
  TO_WAY_OUT_PENDING,
  takeAt,
} from './state.ts'
import { holdTimer, resumeTimer, startTimer } from './timer.ts'
import { CHANGE_END, CHANGE_START } from './trace.ts'
import { becomeDone, becomeFree } from './zone.ts'

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

/** The carrier has left the zone: the transfer turns back, or the zone is free at once. */
export function leaveClear(line: Line, zone: number): void {
  if (line.zoneChanges[zone] === 0) {
    becomeFree(line, zone)
    return
  }
  line.zoneChange[zone] = BACK_PENDING
  addTo(line.changeList, zone)
}

/** Starts the change in the lowest zone where one is due and nothing holds it. False: there is none. */
export function startFirstChange(line: Line): boolean {
  const list = line.changeList
  let best = -1
  let bestPlace = -1
  for (let place = 0; place < list.length; ) {
    const zone = list.items[place]!
    const change = line.zoneChange[zone]!
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
  line.activity++
  line.queue.times[line.changeSlot + best] = line.now + (out ? line.changeOutSeconds[best]! : line.changeBackSeconds[best]!)
  startTimer(line, line.changeSlot + best)
  operateChange(line, best, 1)
  if (line.trace !== null) line.trace.add(line.now, CHANGE_START, best, line.zoneCarrier[best]!, out ? 0 : 1)
  return true
}

export function onChangeEnd(line: Line, zone: number): void {
  const out = line.zoneChange[zone] === TO_WAY_OUT
  line.zoneChange[zone] = NO_CHANGE
  line.activity--
  operateChange(line, zone, 0)
  if (line.trace !== null) line.trace.add(line.now, CHANGE_END, zone, line.zoneCarrier[zone]!, out ? 0 : 1)
  if (out) becomeDone(line, line.zoneCarrier[zone]!, zone)
  else becomeFree(line, zone)
}

/** A stop now holds the zone: its change stands still. */
export function holdChange(line: Line, zone: number): void {
  holdTimer(line, line.changeSlot + zone)
  operateChange(line, zone, 0)
}

/** Nothing holds the zone any longer: its change goes on, or one that was due may start. */
export function resumeChange(line: Line, zone: number): void {
  const change = line.zoneChange[zone]!
  if (change === TO_WAY_OUT || change === BACK) {
    resumeTimer(line, line.changeSlot + zone)
    operateChange(line, zone, 1)
  } else if (change !== NO_CHANGE) addTo(line.changeList, zone)
}
