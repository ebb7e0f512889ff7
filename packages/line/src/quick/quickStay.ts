/** Stays at stations at quick instants (quick.ts). (MODEL.md §5) */
import { C_WORKED, S_WORKING, Z_WORKING } from '../telling/states.ts'
import { settleCarrier, settleStation, settleZone } from './settle.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { RELEASING } from '../state/moves.ts'
import { UNLOAD_DUTY } from '../state/work.ts'
import { endDuty, firstDuty, startDuty, startRelease } from '../work/station.ts'

/** The carrier has come to rest at the station: its first duty starts. False: it has none. */
export function startsStay(line: Line, station: number, carrier: number): boolean {
  const { work } = line
  const duty = firstDuty(line, station, carrier, UNLOAD_DUTY)
  if (duty === NONE) return false
  work.stationServed[station] = 1
  work.stationDuty[station] = duty
  startDuty(line, station, carrier)
  settleZone(line, work.stationZone[station]!, Z_WORKING)
  settleCarrier(line, carrier, C_WORKED)
  settleStation(line, station, S_WORKING)
  return true
}

/** A duty or the release has ended: what follows starts. False: nothing is left to do here. */
export function goesOn(line: Line, station: number, carrier: number): boolean {
  const { work } = line
  if (line.moves.carrierPhase[carrier] === RELEASING) return false
  endDuty(line, station, carrier)
  const duty = firstDuty(line, station, carrier, work.stationDuty[station]! + 1)
  if (duty !== NONE) {
    work.stationDuty[station] = duty
    startDuty(line, station, carrier)
    return true
  }
  if (line.hasRejects) line.rejects.carrierFresh[carrier] = 0
  if (work.releaseSampler[station] === NONE) return false
  startRelease(line, station, carrier)
  return true
}
