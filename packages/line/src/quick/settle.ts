/** What is told of a part whose state changes now, at a quick instant (quick.ts): its seconds up to now, and its state from now on. (MODEL.md §11) */
import { S_EXCHANGING, S_STARVED, Z_FREE } from '../telling/states.ts'
import { CARRIER_SINCE, CARRIER_WIDTH, STATION_SINCE, STATION_WIDTH, ZONE_SINCE, ZONE_WIDTH } from '../telling/collect.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'

/** `row`: where the part's record begins; `since`: place in it of the instant of its last change. */
function settle(seconds: Float64Array, row: number, since: number, states: Uint8Array, part: number, is: number, { now }: Line): void {
  seconds[row + states[part]!]! += now - seconds[row + since]!
  seconds[row + since] = now
  states[part] = is
}

export function settleZone(line: Line, zone: number, is: number): void {
  const { zoneSeconds, zoneState } = line.collector
  settle(zoneSeconds, zone * ZONE_WIDTH, ZONE_SINCE, zoneState, zone, is, line)
}

export function settleStation(line: Line, station: number, is: number): void {
  const { stationSeconds, stationState } = line.collector
  settle(stationSeconds, station * STATION_WIDTH, STATION_SINCE, stationState, station, is, line)
}

export function settleCarrier(line: Line, carrier: number, is: number): void {
  const { carrierSeconds, carrierState } = line.collector
  settle(carrierSeconds, carrier * CARRIER_WIDTH, CARRIER_SINCE, carrierState, carrier, is, line)
}

/** The zone is free from now on, and its station starved, if it was exchanging. */
export function settleFree(line: Line, zone: number): void {
  settleZone(line, zone, Z_FREE)
  const station = line.work.zoneStation[zone]!
  if (station === NONE) return
  const is = line.collector.stationState[station]
  if (is === S_EXCHANGING) settleStation(line, station, S_STARVED)
}
