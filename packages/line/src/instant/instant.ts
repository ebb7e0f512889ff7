/** Everything that happens at one instant, in the order of MODEL.md §1. */

import { onProductArrival } from '../goods/arrivals.ts'
import { setFirstAside } from '../work/calls.ts'
import { onClear } from '../moves/clear.ts'
import { assignCrews } from '../stops/crew.ts'
import { brakeAll, onArrival, startFirstMove } from '../moves/move.ts'
import { onWalkEnd } from '../operators/operators.ts'
import { onReceiverEnd } from '../goods/receiver.ts'
import { maySend, sendFirst } from '../moves/send.ts'
import type { Line } from '../state/line.ts'
import { onWorkEnd, startFirstWork } from '../work/station.ts'
import { onBreak, onSafetyReset, onSafetyStop, onSource } from '../stops/stop.ts'
import { onStoreArrival } from '../work/store.ts'
import { ENDLESS, failEndless } from './pieces.ts'
import { onChangeEnd, startFirstChange } from '../moves/transfer.ts'

/** Handles one instant: all that ends, all that can start, and the braking of those that could not pass; then judges the states. */
export function handleInstant(line: Line): void {
  endAll(line)
  startAll(line)
}

/** The same where `count` slots have been taken out of the queue into `due` already, all that it held for now. */
export function handleDue(line: Line, count: number): void {
  endDue(line, count)
  endAll(line)
  startAll(line)
}

/** Starts all that can start now, one at a time, and judges the states. */
function startAll(line: Line): void {
  const { moves } = line
  let starts = 0
  do {
    while (startFirst(line)) {
      if (++starts > ENDLESS) failEndless(line.now)
      endAll(line)
    }
    if (moves.lookList.length === 0 || !brakeAll(line)) break
    endAll(line)
  } while (line.transfers.changeList.length + line.work.workList.length + moves.moveList.length > 0)
  line.collector.judge()
}

/** Starts one thing: a change, else what is set aside or sent, else work, else a move. False: nothing can start. */
function startFirst(line: Line): boolean {
  return (
    (line.transfers.changeList.length > 0 && startFirstChange(line)) ||
    (line.hasCalls && ((line.calls.asideDue && setFirstAside(line)) || (maySend(line) && sendFirst(line)))) ||
    (line.work.workList.length > 0 && startFirstWork(line)) ||
    (line.moves.moveList.length > 0 && startFirstMove(line))
  )
}

/** Everything that falls due now, by slot: stops first (their slots are the lowest), then arrivals, clears, work, changes, arrivals in the store, walks, products, receivers. */
function endAll(line: Line): void {
  const { queue, now } = line
  const { due } = line.slots
  let rounds = 0
  while (queue.size > 0 && queue.times[queue.first()] === now) {
    let count = 0
    do due[count++] = queue.pop()
    while (queue.size > 0 && queue.times[queue.first()] === now)
    endDue(line, count)
    if (++rounds > ENDLESS) failEndless(now)
  }
}

function endDue(line: Line, count: number): void {
  const { due } = line.slots
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
  const { slots } = line
  let k = 0
  while (k < count && slots.due[k]! < slots.arrivalSlot) end(line, slots.due[k++]!)
  if (line.crew.crewDue) assignCrews(line)
  while (k < count) end(line, slots.due[k++]!)
}

function end(line: Line, slot: number): void {
  const { slots } = line
  if (slot >= slots.changeSlot) {
    if (slot >= slots.operatorSlot) endCall(line, slot)
    else if (slot >= slots.storeSlot) onStoreArrival(line, slot - slots.storeSlot)
    else onChangeEnd(line, slot - slots.changeSlot)
  } else if (slot >= slots.workSlot) onWorkEnd(line, slot - slots.workSlot)
  else if (slot >= slots.clearSlot) onClear(line, slot - slots.clearSlot)
  else if (slot >= slots.arrivalSlot) onArrival(line, slot - slots.arrivalSlot)
  else if (slot === slots.breakSlot) onBreak(line)
  else if (slot < slots.breakSlot) onSource(line, slot)
  else if (slot < slots.resetSlot) onSafetyStop(line, slot - slots.safetySlot)
  else onSafetyReset(line, slot - slots.resetSlot)
}

function endCall(line: Line, slot: number): void {
  const { slots } = line
  if (slot >= slots.receiverSlot) onReceiverEnd(line, slot - slots.receiverSlot)
  else if (slot >= slots.supplySlot) onProductArrival(line, slot - slots.supplySlot)
  else onWalkEnd(line, slot - slots.operatorSlot)
}
