/** The sums of a run against small hand calculations; MODEL.md §11. Whole lines are checked in tests/oracle/identities. */
import { expect, test } from 'vitest'
import { generalLine } from '../../../../tests/bench/lines.ts'
import { GENERAL_LINES } from '../../../../tests/bench/generalLines.ts'
import { differing, valuesOf } from '../../../../tests/helpers/columnsOf.ts'
import { smallLoop, tell } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from '../build/build.ts'
import { type Collector, STATION_SINCE, ZONE_SINCE } from './collect.ts'
import { handleInstant } from '../instant/instant.ts'
import { STATION_STATES, ZONE_STATES } from './result.ts'
import { resetLine } from '../build/start.ts'
import { spent } from '../../../../tests/helpers/spent.ts'

test('occupancy: from the start in to the start out', () => {
  // move 4, clear 1, alone: in each zone for 4 of 16 s; in Z1 from 0 to 4, Z2 4 to 8 …; window (0, 10]: Z0 none (it leaves at 0), Z1 4, Z2 4, Z3 2
  const { result } = tell(smallLoop({ zones: 4, start: [0], move: 4, clear: 1, until: 10 }))
  expect(result.zones.map((zone) => zone.occupancyMean)).toEqual([0, 0.4, 0.4, 0.2])
  // Z2: free 0–4, claimed 4–8, vacating 8–9, free 9–10
  expect(spent(result.zones[2]!.seconds)).toEqual({ free: 5, claimed: 4, vacating: 1 })
})

test('a station that starves and one that waits for the exchange', () => {
  // move 4, clear 1; work in Z1 on a loaded carrier only: starved and exchanging all the time. c0: in 0–4, out 4–5, back 16–20, 20–21
  const { result } = tell(smallLoop({ zones: 4, start: [0], move: 4, clear: 1, stations: [{ at: 1, work: 3 }], until: 20 }))
  expect(spent(result.stations[0]!.seconds)).toEqual({ exchanging: 4 + 1 + 4 - 0, starved: 11 })
})

test('a lap is counted at the first station that unloads, by station index; without one at zone 0', () => {
  const laps = (stations: { at: number; unload?: true; load?: true }[]) =>
    tell(smallLoop({ zones: 4, start: [0], move: 4, clear: 1, stations, until: 33 })).result.lap.count
  // leaves Z0 at 0, 16, 32; Z2 at 8, 24; Z3 at 12, 28
  expect(laps([])).toBe(2)
  expect(laps([{ at: 0, load: true }])).toBe(2)
  expect(laps([{ at: 3, unload: true }])).toBe(1)
  expect(
    laps([
      { at: 2, unload: true },
      { at: 0, unload: true },
    ]),
  ).toBe(1)
})

test('more outputs than there was room for at first', () => {
  // one a second: moves 0.5, all in no time; 1,000 outputs
  const { result } = tell(
    smallLoop({ zones: 2, start: [1], move: 0.5, clear: 0, stations: [{ at: 0, unload: true, load: true }], until: 1001 }),
  )
  expect(result.output).toBe(1000)
  expect(result.outputSeconds).toEqual(Array.from({ length: 1000 }, (_, k) => k + 1.5))
})

test('a collector has a column for every state', () => {
  const line = buildLine(smallLoop({ zones: 3, start: [0], stations: [{ at: 1, load: 1 }] }))
  resetLine(line, 'a', 0)
  expect(line.collector.stationSeconds.length).toBe(STATION_STATES.length + 3)
  expect(line.collector.zoneSeconds.length).toBe(3 * (ZONE_STATES.length + 3))
  expect([STATION_SINCE, ZONE_SINCE]).toEqual([10, 7])
})

test.each([
  ['lanes, operators, supply, rework', () => generalLine(1)],
  ['corners, stops, breaks', () => GENERAL_LINES.corners!()],
  ['from the store and back', () => GENERAL_LINES.graph!()],
  ['receivers, arrivals, inspections', () => GENERAL_LINES.goods!()],
])('what is gathered changes nothing that happens: %s', (_, lineOf) => {
  const line = buildLine(lineOf())
  resetLine(line, 'gathered', 1)
  const happens = (): Map<string, unknown> =>
    new Map(
      [...valuesOf(line)].flatMap(([name, value]) => (name.startsWith('line.collector') ? [] : [[name, structuredClone(value)] as const])),
    )
  const collector = line.collector as Collector
  handleInstant(line)
  for (let instant = 0; instant < 3000; instant++) {
    line.now = line.queue.times[line.queue.first()]!
    handleInstant(line)
    if (instant % 100 > 0) continue
    const before = happens()
    const timers = line.queue.size
    for (let zone = 0; zone < line.zones; zone++) collector.touch(zone)
    collector.judge()
    for (let cause = 0; cause < line.sources; cause++) collector.onCauseChange(cause)
    collector.restart(line.now)
    collector.finish()
    expect(differing(before, happens())).toEqual([])
    expect(line.queue.size).toBe(timers)
  }
})
