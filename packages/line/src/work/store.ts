/** The store of an open line: carriers leave it in the order in which they came. (MODEL.md §1) */
import { wake } from '../moves/moveHeap.ts'
import { endHandling } from '../operators/operators.ts'
import { STORE } from '../spec.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { DONE } from '../state/moves.ts'
import { AT_REST } from '../telling/trace.ts'

/** A move into the store has ended: the carrier is at rest and done. */
export function onStoreArrival(line: Line, carrier: number): void {
  const { moves } = line
  line.activity--
  const path = moves.carrierPath[carrier]!
  if (line.graph.manualStation[path] !== NONE) endHandling(line, path, carrier)
  moves.carrierPath[carrier] = NONE
  moves.carrierPhase[carrier] = DONE
  moves.carrierSince[carrier] = line.now
  if (line.trace !== null) line.trace.add(line.now, AT_REST, STORE, carrier, 0)
  putInStore(line, carrier)
  line.collector.judgeCarrier(carrier)
}

/** Puts the carrier at the end, and wakes the first one. */
export function putInStore(line: Line, carrier: number): void {
  queueInStore(line, carrier)
  wake(line, line.store)
}

/** The first one leaves, and the next one may. */
export function takeFromStore(line: Line): void {
  leaveStore(line)
  wake(line, line.store)
}

/** Puts the carrier at the end; of those that come at one instant the lower number goes first. */
export function queueInStore(line: Line, carrier: number): void {
  const { moves } = line
  const { storeItems, carrierSince } = moves
  let place = moves.storeCount++
  for (; place > 0; place--) {
    const before = storeItems[(moves.storeFirst + place - 1) % line.carriers]!
    if (carrierSince[before]! < carrierSince[carrier]! || before < carrier) break
    storeItems[(moves.storeFirst + place) % line.carriers] = before
  }
  storeItems[(moves.storeFirst + place) % line.carriers] = carrier
  showFirst(line)
}

/** The first one leaves. */
export function leaveStore(line: Line): void {
  const { moves } = line
  moves.storeFirst = (moves.storeFirst + 1) % line.carriers
  moves.storeCount--
  showFirst(line)
}

/** The first in the store stands where a zone would hold its carrier. */
function showFirst({ moves, store }: Line): void {
  moves.zoneCarrier[store] = moves.storeCount === 0 ? NONE : moves.storeItems[moves.storeFirst]!
}
