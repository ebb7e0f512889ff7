/** What is told of a part whose state changes now, at a quick instant (quick.ts): its seconds up to now, and its state from now on. (MODEL.md §11) */
import { CARRIER_SINCE, CARRIER_WIDTH, STATION_SINCE, STATION_WIDTH, ZONE_SINCE, ZONE_WIDTH } from './collect.ts'
import { STATION_STATES, ZONE_STATES } from './result.ts'
import { type Line, NONE } from './state.ts'

const S_STARVED = STATION_STATES.indexOf('starved')
const S_BREAK = STATION_STATES.indexOf('break')
const S_STOPPED = STATION_STATES.indexOf('stopped')
const Z_FREE = ZONE_STATES.indexOf('free')

export function settleZone({ collector, now }: Line, zone: number, is: number): void {
  const { zoneSeconds } = collector
  const row = zone * ZONE_WIDTH
  zoneSeconds[row + collector.zoneState[zone]!]! += now - zoneSeconds[row + ZONE_SINCE]!
  zoneSeconds[row + ZONE_SINCE] = now
  collector.zoneState[zone] = is
}

export function settleStation({ collector, now }: Line, station: number, is: number): void {
  const { stationSeconds } = collector
  const row = station * STATION_WIDTH
  stationSeconds[row + collector.stationState[station]!]! += now - stationSeconds[row + STATION_SINCE]!
  stationSeconds[row + STATION_SINCE] = now
  collector.stationState[station] = is
}

export function settleCarrier({ collector, now }: Line, carrier: number, is: number): void {
  const { carrierSeconds } = collector
  const row = carrier * CARRIER_WIDTH
  carrierSeconds[row + collector.carrierState[carrier]!]! += now - carrierSeconds[row + CARRIER_SINCE]!
  carrierSeconds[row + CARRIER_SINCE] = now
  collector.carrierState[carrier] = is
}

/** The zone is free from now on, and its station starved, if no stop or break holds that. */
export function settleFree(line: Line, zone: number): void {
  settleZone(line, zone, Z_FREE)
  const station = line.zoneStation[zone]!
  if (station === NONE) return
  const is = line.collector.stationState[station]
  if (is !== S_BREAK && is !== S_STOPPED) settleStation(line, station, S_STARVED)
}
