/** Transfers: changes of position, to the way out while a carrier stands on it and back when it is clear. (MODEL.md §4) */
import { wake } from './moveHeap.ts'
import { followChange, operateChange } from '../stops/operation.ts'
import type { Line } from '../state/line.ts'
import { addTo, NONE, takeAt } from '../state/lists.ts'
import { CHANGE_PENDING, CHANGING } from '../state/moves.ts'
import { BACK, BACK_PENDING, NO_CHANGE, TO_WAY_IN, TO_WAY_OUT, TO_WAY_OUT_PENDING } from '../state/transfers.ts'
import { holdTimer, resumeTimer, startTimer } from '../state/timer.ts'
import { CHANGE_END, CHANGE_START } from '../telling/trace.ts'
import { wayNow } from './wayOut.ts'
import { becomeDone, becomeFree, claim } from './zone.ts'

/** The carrier has come to rest and its work here is released: the transfer turns to the way out, or there is nothing to change. */
export function leaveWork(line: Line, carrier: number, zone: number): void {
  const { transfers } = line
  if (transfers.zoneChanges[zone] === 0) {
    becomeDone(line, carrier, zone)
    return
  }
  line.moves.carrierPhase[carrier] = CHANGE_PENDING
  transfers.zoneChange[zone] = TO_WAY_OUT_PENDING
  line.collector.touch(zone)
  addTo(transfers.changeList, zone)
}

/** The carrier has left the zone: the transfer turns back, or the zone is free at once, also where ways in of different positions let it rest. */
export function leaveClear(line: Line, zone: number): void {
  const { transfers } = line
  if (
    transfers.zoneChanges[zone] === 0 ||
    transfers.zoneRests[zone] === 1 ||
    transfers.backPosition[zone] === transfers.zonePosition[zone]
  ) {
    becomeFree(line, zone)
    return
  }
  transfers.zoneChange[zone] = BACK_PENDING
  addTo(transfers.changeList, zone)
}

/** Fixes the way out where that is done once; whether the transfer stands otherwise than it needs. */
function mustTurn(line: Line, zone: number): boolean {
  const { moves, transfers } = line
  const way = wayNow(line, zone, moves.zoneCarrier[zone]!)
  if (transfers.zoneFixes[zone] === 1) moves.zoneWay[zone] = way
  return way !== NONE && transfers.pathFromPosition[way] !== transfers.zonePosition[zone]
}

/** Starts the change in the lowest zone where one is due and nothing holds it. False: there is none. */
export function startFirstChange(line: Line): boolean {
  const { transfers, moves } = line
  const list = transfers.changeList
  let best = -1
  let bestPlace = -1
  for (let place = 0; place < list.length; ) {
    const zone = list.items[place]!
    const change = transfers.zoneChange[zone]!
    if (change === TO_WAY_OUT_PENDING && !mustTurn(line, zone)) {
      takeAt(list, place)
      transfers.zoneChange[zone] = NO_CHANGE
      becomeDone(line, moves.zoneCarrier[zone]!, zone)
      continue
    }
    if (line.stops.zoneHeld[zone]! > 0 || (change !== TO_WAY_OUT_PENDING && change !== BACK_PENDING)) {
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
  const out = transfers.zoneChange[best] === TO_WAY_OUT_PENDING
  transfers.zoneChange[best] = out ? TO_WAY_OUT : BACK
  if (out) moves.carrierPhase[moves.zoneCarrier[best]!] = CHANGING
  startChange(line, best, moves.zoneCarrier[best]!, out ? 0 : 1)
  return true
}

export function startChange(line: Line, zone: number, carrier: number, detail: number): void {
  const { slots, transfers } = line
  line.activity++
  line.queue.times[slots.changeSlot + zone] = line.now + transfers.changeSeconds[2 * zone + 1 - transfers.zonePosition[zone]!]!
  startTimer(line, slots.changeSlot + zone)
  operateChange(line, zone)
  if (line.trace !== null) line.trace.add(line.now, CHANGE_START, zone, carrier, detail)
}

/** Whether the transfer at the end of the path rests in the other position than the path needs. */
export function mustTurnIn(line: Line, path: number): boolean {
  const { transfers } = line
  const to = line.graph.pathTo[path]!
  return transfers.zoneRests[to] === 1 && transfers.zonePosition[to] !== transfers.pathToPosition[path]
}

/** A carrier at rest has won the transfer in the wrong position: it is set aside and changes, then the move starts. */
export function startTurnIn(line: Line, path: number): void {
  const { graph, moves } = line
  const to = graph.pathTo[path]!
  const from = graph.pathFrom[path]!
  const carrier = moves.zoneCarrier[from]!
  claim(line, to, carrier)
  moves.zoneWay[from] = path
  line.transfers.zoneChange[to] = TO_WAY_IN
  startChange(line, to, carrier, 2)
}

/** The transfer stands in its other position and changes no longer. */
export function endChange(line: Line, zone: number): void {
  const { transfers } = line
  transfers.zoneChange[zone] = NO_CHANGE
  transfers.zonePosition[zone] = 1 - transfers.zonePosition[zone]!
}

export function onChangeEnd(line: Line, zone: number): void {
  const { moves } = line
  const change = line.transfers.zoneChange[zone]!
  line.activity--
  endChange(line, zone)
  const carrier = change === TO_WAY_IN ? moves.zoneClaimant[zone]! : moves.zoneCarrier[zone]!
  if (line.trace !== null) line.trace.add(line.now, CHANGE_END, zone, carrier, change === TO_WAY_OUT ? 0 : change === BACK ? 1 : 2)
  if (change === TO_WAY_OUT) becomeDone(line, carrier, zone)
  else if (change === BACK) becomeFree(line, zone)
  else wake(line, moves.carrierZone[carrier]!)
}

/** A stop now holds the zone: its change stands still. */
export function holdChange(line: Line, zone: number): void {
  holdTimer(line, line.slots.changeSlot + zone)
  followChange(line, zone)
}

/** Nothing holds the zone any longer: its change goes on, or one that was due may start. */
export function resumeChange(line: Line, zone: number): void {
  const { transfers } = line
  const change = transfers.zoneChange[zone]!
  if (change === TO_WAY_OUT || change === BACK || change === TO_WAY_IN) {
    resumeTimer(line, line.slots.changeSlot + zone)
    followChange(line, zone)
  } else if (change !== NO_CHANGE) addTo(transfers.changeList, zone)
}
