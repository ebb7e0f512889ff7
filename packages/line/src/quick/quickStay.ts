/** Stays at stations at quick instants (quick.ts). (MODEL.md §5) */
import { C_WORKED, S_WORKING, Z_WORKING } from '../telling/states.ts'
import { settleCarrier, settleStation, settleZone } from './settle.ts'
import { type Line, NONE, RELEASING, UNLOAD_DUTY } from '../instant/state.ts'
import { endDuty, firstDuty, startDuty, startRelease } from '../work/station.ts'

/** The carrier has come to rest at the station: its first duty starts. False: it has none. */
export function startsStay(line: Line, station: number, carrier: number): boolean {
  const duty = firstDuty(line, station, carrier, UNLOAD_DUTY)
  if (duty === NONE) return false
  line.stationServed[station] = 1
  line.stationDuty[station] = duty
  startDuty(line, station, carrier)
  settleZone(line, line.stationZone[station]!, Z_WORKING)
  settleCarrier(line, carrier, C_WORKED)
  settleStation(line, station, S_WORKING)
  return true
}

/** A duty or the release has ended: what follows starts. False: nothing is left to do here. */
export function goesOn(line: Line, station: number, carrier: number): boolean {
  if (line.carrierPhase[carrier] === RELEASING) return false
  endDuty(line, station, carrier)
  const duty = firstDuty(line, station, carrier, line.stationDuty[station]! + 1)
  if (duty !== NONE) {
    line.stationDuty[station] = duty
    startDuty(line, station, carrier)
    return true
  }
  if (line.hasRejects) line.rejects.carrierFresh[carrier] = 0
  if (line.releaseSampler[station] === NONE) return false
  startRelease(line, station, carrier)
  return true
}
