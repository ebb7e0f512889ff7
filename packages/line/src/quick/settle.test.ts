import { expect, test } from 'vitest'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from '../build/build.ts'
import { CARRIER_SINCE, STATION_SINCE, ZONE_SINCE, ZONE_WIDTH } from '../telling/collect.ts'
import { CARRIER_STATES, STATION_STATES, ZONE_STATES } from '../telling/result.ts'
import { settleCarrier, settleFree, settleStation, settleZone } from './settle.ts'
import { resetLine } from '../build/start.ts'
import type { Line } from '../state/line.ts'

const zone = (name: (typeof ZONE_STATES)[number]): number => ZONE_STATES.indexOf(name)
const station = (name: (typeof STATION_STATES)[number]): number => STATION_STATES.indexOf(name)
const carrier = (name: (typeof CARRIER_STATES)[number]): number => CARRIER_STATES.indexOf(name)

function lineAt(now: number): Line {
  const line = buildLine(smallLoop({ zones: 3, start: [0], stations: [{ at: 1, load: 5 }] }))
  resetLine(line, 'a', 0)
  line.now = now
  return line
}

test('the seconds so far go to the state so far', () => {
  const line = lineAt(4)
  const { zoneSeconds, stationSeconds, carrierSeconds } = line.collector
  settleZone(line, 1, zone('claimed'))
  settleStation(line, 0, station('exchanging'))
  settleCarrier(line, 0, carrier('moving'))
  expect([zoneSeconds[ZONE_WIDTH + zone('free')], zoneSeconds[ZONE_WIDTH + ZONE_SINCE], line.collector.zoneState[1]]).toEqual([
    4,
    4,
    zone('claimed'),
  ])
  expect([stationSeconds[station('starved')], stationSeconds[STATION_SINCE], line.collector.stationState[0]]).toEqual([
    4,
    4,
    station('exchanging'),
  ])
  expect([carrierSeconds[carrier('waiting empty')], carrierSeconds[CARRIER_SINCE], line.collector.carrierState[0]]).toEqual([
    4,
    4,
    carrier('moving'),
  ])
})

test('a zone that turns free starves its station, but for a stop or a break', () => {
  for (const [is, becomes] of [
    ['exchanging', 'starved'],
    ['break', 'break'],
    ['stopped', 'stopped'],
  ] as const) {
    const line = lineAt(4)
    line.collector.stationState[0] = station(is)
    settleFree(line, 1)
    expect([line.collector.zoneState[1], STATION_STATES[line.collector.stationState[0]!]]).toEqual([zone('free'), becomes])
  }
})
