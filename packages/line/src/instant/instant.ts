/** Everything that happens at one instant, in the order of MODEL.md §1. */

import { onProductArrival } from '../goods/arrivals.ts'
import { setFirstAside } from '../work/calls.ts'
import { onClear } from '../moves/clear.ts'
import { assignCrews } from '../stops/crew.ts'
import { brakeAll, onArrival, startFirstMove } from '../moves/move.ts'
import { onWalkEnd } from '../operators/operators.ts'
import { onReceiverEnd } from '../goods/receiver.ts'
import { sendFirst } from '../moves/send.ts'
import type { Line } from './state.ts'
import { onWorkEnd, startFirstWork } from '../work/station.ts'
import { onBreak, onSafetyReset, onSafetyStop, onSource } from '../stops/stop.ts'
import { onStoreArrival } from '../work/store.ts'
import { onChangeEnd, startFirstChange } from '../moves/transfer.ts'

/** Handles one instant: stops, ends, starts one at a time, and the braking of those that could not pass; then judges the states. */
export function handleInstant(line: Line): void {
  endWhatEnds(line)
  startWhatStarts(line)
}

/** The same where `count` slots have been taken out of the queue into `due` already, all that it held for now. */
export function handleDue(line: Line, count: number): void {
  endDue(line, count)
  endWhatEnds(line)
  startWhatStarts(line)
}

/** Starts all that can start now, one at a time, and judges the states. */
export function startWhatStarts(line: Line): void {
  do {
    while (startFirst(line)) endWhatEnds(line)
    if (line.lookList.length === 0 || !brakeAll(line)) break
    endWhatEnds(line)
  } while (line.changeList.length + line.workList.length + line.moveList.length > 0)
  line.collector.judge()
}

/** Starts one thing: a change, else what is set aside or sent, else work, else a move. False: nothing can start. */
function startFirst(line: Line): boolean {
  return (
    (line.changeList.length > 0 && startFirstChange(line)) ||
    (line.hasCalls && (setFirstAside(line) || sendFirst(line))) ||
    (line.workList.length > 0 && startFirstWork(line)) ||
    (line.moveList.length > 0 && startFirstMove(line))
  )
}

/** Everything that falls due now, by slot: stops first (their slots are the lowest), then arrivals, clears, work, changes, arrivals in the store, walks, products, receivers. */
function endWhatEnds(line: Line): void {
  const { queue, due, now } = line
  while (queue.size > 0 && queue.times[queue.first()] === now) {
    let count = 0
    do due[count++] = queue.pop()
    while (queue.size > 0 && queue.times[queue.first()] === now)
    endDue(line, count)
  }
}

function endDue(line: Line, count: number): void {
  const { due } = line
  line.events += count
  if (count > 1) sortFirst(due, count)
  if (line.hasCrews) endWithCrews(line, count)
  else for (let k = 0; k < count; k++) end(line, due[k]!)
}

/** Puts the first `count` numbers in order, by steps that grow shorter (Shell 1959): no list is made, and it does not matter how many there are. */
function sortFirst(list: Int32Array, count: number): void {
  let step = 1
  while (3 * step + 1 < count) step = 3 * step + 1
  for (; step >= 1; step = (step - 1) / 3) {
    for (let k = step; k < count; k++) {
      const number = list[k]!
      let at = k
      while (at >= step && list[at - step]! > number) {
        list[at] = list[at - step]!
        at -= step
      }
      list[at] = number
    }
  }
}

/** Crews are given out when all stops of the instant have ended and begun. */
function endWithCrews(line: Line, count: number): void {
  let k = 0
  while (k < count && line.due[k]! < line.arrivalSlot) end(line, line.due[k++]!)
  if (line.crew.crewDue) assignCrews(line)
  while (k < count) end(line, line.due[k++]!)
}

function end(line: Line, slot: number): void {
  if (slot >= line.changeSlot) {
    if (slot >= line.operatorSlot) endCall(line, slot)
    else if (slot >= line.storeSlot) onStoreArrival(line, slot - line.storeSlot)
    else onChangeEnd(line, slot - line.changeSlot)
  } else if (slot >= line.workSlot) onWorkEnd(line, slot - line.workSlot)
  else if (slot >= line.clearSlot) onClear(line, slot - line.clearSlot)
  else if (slot >= line.arrivalSlot) onArrival(line, slot - line.arrivalSlot)
  else if (slot === line.breakSlot) onBreak(line)
  else if (slot < line.breakSlot) onSource(line, slot)
  else if (slot < line.resetSlot) onSafetyStop(line, slot - line.safety.safetySlot)
  else onSafetyReset(line, slot - line.resetSlot)
}

function endCall(line: Line, slot: number): void {
  if (slot >= line.goods.receiverSlot) onReceiverEnd(line, slot - line.goods.receiverSlot)
  else if (slot >= line.goods.supplySlot) onProductArrival(line, slot - line.goods.supplySlot)
  else onWalkEnd(line, slot - line.operatorSlot)
}
