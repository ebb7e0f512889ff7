/** The line at time 0: carriers empty, at rest and done. (MODEL.md §10) */

import { resetSupplies } from '../goods/arrivals.ts'
import { wake } from '../moves/moveHeap.ts'
import { resetOperators } from '../operators/operators.ts'
import { type LineSpec, STORE } from '../spec.ts'
import { clearList, DONE, FREE, type Line, NONE, OCCUPIED } from '../instant/state.ts'
import { startStops } from '../stops/stop.ts'
import { putInStore } from '../work/store.ts'
import { wayNow } from '../moves/wayOut.ts'

/**
 * Zones in which the carriers stand at time 0, by carrier.
 *
 * `spread`: carrier c in the ⌊c·K/N⌋-th of the K zones that are no exit-clear transfers; `packed`: in the first N of them; `store`: STORE for all; or as listed.
 *
 * @throws RangeError  if there are more carriers than places, or a list of the wrong length, or two in one zone
 * @example startZones(line) // => [0, 2, 5]
 */
export function startZones(spec: LineSpec): number[] {
  const { count, start } = spec.carriers
  const places = spec.zones.flatMap((zone, z) => (zone.transfer?.enterOnlyIfExitClear === true ? [] : [z]))
  const zones =
    start === 'spread'
      ? Array.from({ length: count }, (_, c) => places[Math.floor((c * places.length) / count)]!)
      : start === 'packed'
        ? places.slice(0, count)
        : start === 'store'
          ? new Array<number>(count).fill(STORE)
          : [...start]
  const isOpen = spec.paths.some((path) => path.from === STORE)
  if (zones.includes(STORE) && !isOpen) throw new RangeError('carriers start in the store, but no path leads out of it')
  if (zones.length !== count || ((start === 'spread' || start === 'packed') && count > places.length)) {
    throw new RangeError(`${count} carriers cannot start in ${typeof start === 'string' ? places.length : zones.length} places`)
  }
  const standing = zones.filter((zone) => zone !== STORE)
  if (new Set(standing).size !== standing.length) throw new RangeError('two carriers start in one zone')
  return zones
}

/** Sets the line to time 0 of a replication. */
export function resetLine(line: Line, seed: string, replication: number): void {
  line.streams.reset(seed, replication)
  line.now = 0
  line.events = 0
  line.activity = 0
  line.nextSerial = 0
  line.oldestSerial = 0
  line.sections.sectionOperates.fill(0)
  line.crew.crewsBusy = 0
  line.crew.crewDue = false
  line.calls.asideDue = true
  line.breaksNow = 0
  line.breakNext = 0
  line.queue.clear()
  for (const list of [line.workList, line.moveList, line.changeList, line.lookList, line.calls.asideList, line.calls.callList])
    clearList(list)
  for (const column of [
    line.calls.stationAside,
    line.calls.stationCalled,
    line.goods.receiverBusy,
    line.goods.receiverAside,
    line.carrierRejected,
    line.rejects.carrierFresh,
  ])
    column.fill(0)
  for (const column of [line.rejects.taskListed, line.crew.sourceWaits]) column.fill(0)
  for (const column of [
    line.calls.stationSent,
    line.calls.stationThere,
    line.staff.stationHandling,
    line.goods.receiverWaiting,
    line.safety.safetyActive,
  ])
    column.fill(0)
  for (const column of [line.isHeldBack, line.zoneState, line.zoneChange, line.zoneClearing, line.pathHeld, line.pathLooks]) column.fill(0)
  for (const column of [
    line.stationDuty,
    line.stationServed,
    line.sourceDown,
    line.sourceRuns,
    line.operatesIn,
    line.operatesOut,
    line.operatesChange,
  ])
    column.fill(0)
  for (const column of [line.streamUses, line.taskDrawn, line.zoneHeld, line.stationHeld, line.zoneOperates, line.zoneStarts])
    column.fill(0)
  for (const column of [
    line.zoneCarrier,
    line.zoneClaimant,
    line.pathCarrier,
    line.carrierSerial,
    line.carrierPath,
    line.leavingPath,
    line.zoneLastIn,
    line.startPath,
  ])
    column.fill(NONE)
  line.zoneState.fill(FREE)
  line.taskDone.fill(0)
  line.mixGiven.fill(0)
  line.clearAt.fill(0)
  line.carrierPhase.fill(DONE)
  line.carrierSince.fill(0)
  line.zoneWay.fill(NONE)
  if (line.isLoop) line.leavingPath.set(line.onlyOut)
  line.zonePosition.set(line.startPosition)
  line.storeFirst = 0
  line.storeCount = 0
  const places = startZones(line.spec)
  places.forEach((zone, carrier) => {
    line.carrierZone[carrier] = zone === STORE ? line.store : zone
    if (zone === STORE) {
      putInStore(line, carrier)
      return
    }
    line.zoneCarrier[zone] = carrier
    line.zoneState[zone] = OCCUPIED
    wake(line, zone)
  })
  for (const zone of places) if (zone !== STORE && line.zoneChanges[zone] === 1) standAsWayOut(line, zone)
  if (line.trace !== null) line.trace.reset()
  resetOperators(line)
  resetSupplies(line)
  startStops(line)
  line.collector.reset()
}

/** At time 0 the transfer under a carrier stands as its way out needs. (MODEL.md §4) */
function standAsWayOut(line: Line, zone: number): void {
  const way = wayNow(line, zone, line.zoneCarrier[zone]!)
  if (line.zoneFixes[zone] === 1) line.zoneWay[zone] = way
  if (way !== NONE) line.zonePosition[zone] = line.pathFromPosition[way]!
}
