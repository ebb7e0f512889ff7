/** The store of an open line: carriers leave it in the order in which they came. (MODEL.md §1) */
import { wake } from '../moves/moveHeap.ts'
import { endHandling } from '../operators/operators.ts'
import { STORE } from '../spec.ts'
import { DONE, type Line, NONE } from '../instant/state.ts'
import { AT_REST } from '../telling/trace.ts'

/** A move into the store has ended: the carrier is at rest and done. */
export function onStoreArrival(line: Line, carrier: number): void {
  line.activity--
  const path = line.carrierPath[carrier]!
  if (line.manualStation[path] !== NONE) endHandling(line, path, carrier)
  line.carrierPath[carrier] = NONE
  line.carrierPhase[carrier] = DONE
  line.carrierSince[carrier] = line.now
  if (line.trace !== null) line.trace.add(line.now, AT_REST, STORE, carrier, 0)
  putInStore(line, carrier)
  line.collector.judgeCarrier(carrier)
}

/** Puts the carrier at the end; of those that come at one instant the lower number goes first. */
export function putInStore(line: Line, carrier: number): void {
  const { storeItems, carrierSince } = line
  let place = line.storeCount++
  for (; place > 0; place--) {
    const before = storeItems[(line.storeFirst + place - 1) % line.carriers]!
    if (carrierSince[before]! < carrierSince[carrier]! || before < carrier) break
    storeItems[(line.storeFirst + place) % line.carriers] = before
  }
  storeItems[(line.storeFirst + place) % line.carriers] = carrier
  showFirst(line)
}

/** The first one leaves. */
export function takeFromStore(line: Line): void {
  line.storeFirst = (line.storeFirst + 1) % line.carriers
  line.storeCount--
  showFirst(line)
}

/** The first in the store stands where a zone would hold its carrier. */
function showFirst(line: Line): void {
  line.zoneCarrier[line.store] = line.storeCount === 0 ? NONE : line.storeItems[line.storeFirst]!
  wake(line, line.store)
}
