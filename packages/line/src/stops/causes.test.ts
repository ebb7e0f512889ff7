import { expect, test } from 'vitest'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from '../build/build.ts'
import { Causes } from './causes.ts'
import { resetLine } from '../build/start.ts'
import type { Line } from '../state/line.ts'

/** Sources: 0 of the station in Z1, 1 of Z1, 2 of Z2, 3 of the line; then the break. */
function lineWith(conveyorStops: boolean, worksInBreaks = false): Line {
  const line = buildLine(
    smallLoop({
      zones: 4,
      stations: [{ at: 1, load: 1, worksInBreaks }],
      stops: [
        { name: 'a', on: { kind: 'station', index: 0 }, after: 1, repair: 1 },
        { name: 'b', on: { kind: 'zone', index: 1 }, after: 1, repair: 1 },
        { name: 'c', on: { kind: 'zone', index: 2 }, after: 1, repair: 1 },
        { name: 'd', on: { kind: 'section', index: 0 }, after: 1, repair: 1 },
      ],
      breaks: [[50, 5]],
      conveyorStops,
    }),
  )
  resetLine(line, 'a', 0)
  return line
}

/** Adds seconds to the causes that hold a zone, or the station. */
function add(causes: Causes, seconds: number, what: 'zone' | 'station', index: number): void {
  causes.held[0] = seconds
  if (what === 'zone') causes.holdZone(index)
  else causes.holdStation(index)
}

test('a stopped zone counts every source on it, a station its own and those of its zone', () => {
  const line = lineWith(false)
  const causes = new Causes(line)
  for (const source of [0, 1, 2, 3]) line.stops.sourceDown[source] = 1
  add(causes, 5, 'zone', 1)
  add(causes, 7, 'zone', 2)
  add(causes, 2, 'zone', 0)
  add(causes, 3, 'station', 0)
  const row = (list: Float64Array, part: number) => [...list.subarray(5 * part, 5 * part + 5)]
  expect([0, 1, 2, 3].map((zone) => row(causes.zoneSeconds, zone))).toEqual([
    [0, 0, 0, 2, 0],
    [0, 5, 0, 5, 0],
    [0, 0, 7, 7, 0],
    [0, 0, 0, 0, 0],
  ])
  expect(row(causes.stationSeconds, 0)).toEqual([3, 3, 0, 3, 0])
})

test('a break counts at zones if the conveyor stops, at a station also if it has breaks', () => {
  const breakSeconds = (conveyorStops: boolean, worksInBreaks: boolean) => {
    const line = lineWith(conveyorStops, worksInBreaks)
    const causes = new Causes(line)
    line.stops.breaksNow = 1
    add(causes, 5, 'zone', 1)
    add(causes, 3, 'station', 0)
    return [causes.zoneSeconds[5 + 4], causes.stationSeconds[4]]
  }
  expect(breakSeconds(false, false)).toEqual([0, 3])
  expect(breakSeconds(false, true)).toEqual([0, 0])
  expect(breakSeconds(true, false)).toEqual([5, 3])
  expect(breakSeconds(true, true)).toEqual([5, 3])
})

test('stops are counted where they begin, their seconds where they last', () => {
  const line = lineWith(false)
  const causes = new Causes(line)
  line.now = 10
  causes.begin(0)
  line.stops.sourceDown[0] = 1
  line.now = 14
  causes.end(0)
  line.stops.sourceDown[0] = 0
  causes.begin(1)
  line.stops.sourceDown[1] = 1
  expect([...causes.count, ...causes.seconds]).toEqual([1, 1, 0, 0, 0, 4, 0, 0, 0, 0])
  // from 20 on: the second one is still down, and no new one has begun
  causes.restart(20)
  line.now = 23
  causes.begin(4)
  line.stops.breaksNow = 1
  line.now = 30
  causes.finish()
  expect([...causes.count, ...causes.seconds]).toEqual([0, 0, 0, 0, 1, 0, 10, 0, 0, 7])
})
