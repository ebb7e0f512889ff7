import { expect, test } from 'vitest'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from '../build/build.ts'
import { STATION_SINCE } from '../telling/collect.ts'
import { goesOn, startsStay } from './quickStay.ts'
import { resetLine } from '../build/start.ts'
import type { Line } from '../state/line.ts'
import { RELEASING, WORKING } from '../state/moves.ts'
import { LOAD_DUTY, WORK_DUTY } from '../state/work.ts'

/** c0 stands in Z1 at a station that loads for 5 s, works for 7 s and releases for 2 s. */
function atStation(): Line {
  const line = buildLine(smallLoop({ zones: 4, start: [1], stations: [{ at: 1, load: 5, work: { w: 7 }, release: 2 }] }))
  resetLine(line, 'a', 0)
  line.now = 3
  return line
}
const ends = (line: Line): number => line.queue.times[line.slots.workSlot]!

test('a stay is its duties one after the other, then the release; what is told changes with the first of them only', () => {
  const line = atStation()
  expect(startsStay(line, 0, 0)).toBe(true)
  expect([line.moves.carrierPhase[0], line.work.stationDuty[0], ends(line), line.work.stationServed[0]]).toEqual([WORKING, LOAD_DUTY, 8, 1])
  expect(line.collector.stationSeconds[STATION_SINCE]).toBe(3)
  line.queue.pop()
  line.now = 8
  expect(goesOn(line, 0, 0)).toBe(true)
  expect([line.moves.carrierPhase[0], line.work.stationDuty[0], ends(line)]).toEqual([WORKING, WORK_DUTY, 15])
  line.queue.pop()
  line.now = 15
  expect(goesOn(line, 0, 0)).toBe(true)
  expect([line.moves.carrierPhase[0], ends(line)]).toEqual([RELEASING, 17])
  line.queue.pop()
  line.now = 17
  expect(goesOn(line, 0, 0)).toBe(false)
  expect(line.collector.stationSeconds[STATION_SINCE]).toBe(3)
})

test('a carrier with nothing to do here starts no stay', () => {
  const line = buildLine(smallLoop({ zones: 4, start: [1], stations: [{ at: 1, unload: 5 }] }))
  resetLine(line, 'a', 0)
  expect(startsStay(line, 0, 0)).toBe(false)
  expect([line.queue.size, line.work.stationServed[0]]).toEqual([0, 0])
})
