/** Whether a carrier has anything to do at a station. (MODEL.md §5) */
import { isTaskDue } from '../goods/rejects.ts'
import { ACCEPTS_ALL } from '../state/goods.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { LOAD_DUTY, UNLOAD_DUTY, WORK_DUTY } from '../state/work.ts'

/** Whether the carrier, as it is now, has this duty at the station. */
export function dutyApplies(line: Line, station: number, duty: number, carrier: number): boolean {
  const { work } = line
  if (work.hasDuty[3 * station + duty] === 0) return false
  const { goods } = line
  const isLoaded = goods.carrierSerial[carrier] !== NONE
  if (duty === LOAD_DUTY) return !isLoaded
  if (!isLoaded) return false
  if (
    duty === UNLOAD_DUTY &&
    goods.stationAccepts[station] !== ACCEPTS_ALL &&
    goods.stationAccepts[station] !== goods.carrierRejected[carrier]
  )
    return false
  const first = work.dutyFirst[3 * station + duty]!
  const last = work.dutyFirst[3 * station + duty + 1]!
  if (duty === UNLOAD_DUTY && first === last) return true
  const variant = goods.carrierVariant[carrier]!
  for (let entry = first; entry < last; entry++) {
    if (work.entrySampler[entry * line.variants + variant] === NONE) continue
    if (duty === UNLOAD_DUTY || isTaskDue(line, carrier, work.entryTask[entry]!)) return true
  }
  return false
}

/** Whether a carrier on its way to the zone will have something to do there. */
export function dutyAhead(line: Line, carrier: number, zone: number): boolean {
  const station = line.work.zoneStation[zone]!
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
