/** Whether a carrier has anything to do at a station. (MODEL.md §5) */
import { isTaskDue } from '../goods/rejects.ts'
import { ACCEPTS_ALL, type Line, LOAD_DUTY, NONE, UNLOAD_DUTY, WORK_DUTY } from '../instant/state.ts'

/** Whether the carrier, as it is now, has this duty at the station. */
export function dutyApplies(line: Line, station: number, duty: number, carrier: number): boolean {
  if (line.hasDuty[3 * station + duty] === 0) return false
  const isLoaded = line.carrierSerial[carrier] !== NONE
  if (duty === LOAD_DUTY) return !isLoaded
  if (!isLoaded) return false
  if (
    duty === UNLOAD_DUTY &&
    line.stationAccepts[station] !== ACCEPTS_ALL &&
    line.stationAccepts[station] !== line.carrierRejected[carrier]
  )
    return false
  const first = line.dutyFirst[3 * station + duty]!
  const last = line.dutyFirst[3 * station + duty + 1]!
  if (duty === UNLOAD_DUTY && first === last) return true
  const variant = line.carrierVariant[carrier]!
  for (let entry = first; entry < last; entry++) {
    if (line.entrySampler[entry * line.variants + variant] === NONE) continue
    if (duty === UNLOAD_DUTY || isTaskDue(line, carrier, line.entryTask[entry]!)) return true
  }
  return false
}

/** Whether a carrier on its way to the zone will have something to do there. */
export function dutyAhead(line: Line, carrier: number, zone: number): boolean {
  const station = line.zoneStation[zone]!
  return station !== NONE && hasDutyLeft(line, station, carrier)
}

/** Whether the carrier, as it is now, has any duty at the station. */
export function hasDutyLeft(line: Line, station: number, carrier: number): boolean {
  return (
    dutyApplies(line, station, UNLOAD_DUTY, carrier) ||
    dutyApplies(line, station, LOAD_DUTY, carrier) ||
    dutyApplies(line, station, WORK_DUTY, carrier)
  )
}
