/** The line at time 0: carriers empty, at rest and done. (MODEL.md §10) */
import { startStops } from './stop.ts'
import type { LineSpec } from './spec.ts'
import { addTo, clearList, DONE, FREE, type Line, NONE, OCCUPIED } from './state.ts'

/**
 * Zones in which the carriers stand at time 0, by carrier.
 *
 * `spread`: carrier c in the ⌊c·K/N⌋-th of the K zones that are no exit-clear transfers; `packed`: in the first N of them; or as listed.
 *
 * @throws RangeError  if there are more carriers than places, or a list of the wrong length, or two in one zone
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
          ? []
          : [...start]
  if (zones.length !== count || (typeof start === 'string' && count > places.length)) {
    throw new RangeError(`${count} carriers cannot start in ${typeof start === 'string' ? places.length : zones.length} places`)
  }
  if (new Set(zones).size !== count) throw new RangeError('two carriers start in one zone')
  return zones
}

/** Sets the line to time 0 of a replication. */
export function resetLine(line: Line, seed: string, replication: number): void {
  line.streams.reset(seed, replication)
  line.now = 0
  line.events = 0
  line.activity = 0
  line.nextSerial = 0
  line.lineOperates = 0
  line.breaksNow = 0
  line.breakNext = 0
  line.queue.clear()
  for (const list of [line.workList, line.moveList, line.changeList, line.lookList]) clearList(list)
  for (const column of [line.isHeldBack, line.zoneState, line.zoneChange, line.pathClearing, line.pathHeld, line.pathLooks]) column.fill(0)
  for (const column of [line.stationDuty, line.stationServed, line.sourceDown, line.operatesIn, line.operatesOut, line.operatesChange])
    column.fill(0)
  for (const column of [line.streamUses, line.taskDrawn, line.zoneHeld, line.stationHeld, line.zoneOperates]) column.fill(0)
  for (const column of [line.zoneCarrier, line.zoneClaimant, line.pathCarrier, line.carrierSerial]) column.fill(NONE)
  line.zoneState.fill(FREE)
  line.taskDone.fill(0)
  line.mixGiven.fill(0)
  line.clearAt.fill(0)
  line.carrierPhase.fill(DONE)
  line.carrierSince.fill(0)
  line.carrierLapStart.fill(Number.NaN)
  startZones(line.spec).forEach((zone, carrier) => {
    line.carrierZone[carrier] = zone
    line.zoneCarrier[zone] = carrier
    line.zoneState[zone] = OCCUPIED
    addTo(line.moveList, zone)
  })
  if (line.trace !== null) line.trace.reset()
  startStops(line)
  line.collector.reset()
}
