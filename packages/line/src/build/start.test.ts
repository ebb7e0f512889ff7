/** Where the carriers stand at time 0, and that a line can be set back to it: MODEL.md §10. */
import { describe, expect, test } from 'vitest'
import { chain, smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { smallLoop, tell, timeline } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from './build.ts'
import { handleInstant } from '../instant/instant.ts'
import { resetLine, startZones } from './start.ts'
import { NONE } from '../state/lists.ts'
import { DONE, FREE, OCCUPIED } from '../state/moves.ts'
import { spent } from '../../../../tests/helpers/spent.ts'

const EXIT = { lift: 1, lower: 1, exitClear: true }

describe('places', () => {
  test('spread: carrier c in the ⌊c·K/N⌋-th place', () => {
    // K = 10: ⌊0, 3.3, 6.7⌋; ⌊0, 1.4, 2.9, 4.3, 5.7, 7.1, 8.6⌋
    expect(startZones(smallLoop({ zones: 10, start: 3 }))).toEqual([0, 3, 6])
    expect(startZones(smallLoop({ zones: 10, start: 7 }))).toEqual([0, 1, 2, 4, 5, 7, 8])
    expect(startZones(smallLoop({ zones: 10, start: 1 }))).toEqual([0])
  })
  test('exit-clear transfers are no place, other transfers are', () => {
    // places Z0, Z2, Z3, Z5: K = 4
    const transfers = { 1: EXIT, 4: EXIT, 5: { lift: 1, lower: 1 } }
    expect(startZones(smallLoop({ zones: 6, start: 3, transfers }))).toEqual([0, 2, 3])
    expect(startZones(smallLoop({ zones: 6, start: 4, transfers }))).toEqual([0, 2, 3, 5])
    expect(startZones(smallLoop({ zones: 6, start: 3, packed: true, transfers }))).toEqual([0, 2, 3])
  })
  test('as listed, in the order of the carriers', () => {
    expect(startZones(smallLoop({ zones: 6, start: [4, 0, 2] }))).toEqual([4, 0, 2])
  })
  test('too many, a list of the wrong length, two in one zone', () => {
    const transfers = { 1: EXIT, 4: EXIT }
    expect(() => startZones(smallLoop({ zones: 6, start: 5, transfers, odd: true }))).toThrow('5 carriers cannot start in 4 places')
    expect(() => startZones(smallLoop({ zones: 6, start: 5, packed: true, transfers, odd: true }))).toThrow(RangeError)
    const spec = smallLoop({ zones: 6, start: [0, 1] })
    expect(() => startZones({ ...spec, carriers: { ...spec.carriers, count: 3 } })).toThrow('3 carriers cannot start in 2 places')
    expect(() => startZones(smallLoop({ zones: 6, start: [3, 3], odd: true }))).toThrow('two carriers start in one zone')
  })
})

test('a carrier that stands at a station at time 0 has no duty there', () => {
  // move 4, clear 3: it leaves Z1 at 0 and loads on its return at 12
  expect(
    timeline(smallLoop({ zones: 3, start: [1], move: 4, clear: 3, stations: [{ at: 1, load: 5 }], until: 17 }), 'leave', 'load'),
  ).toEqual(['0 leave Z1 c0', '4 leave Z2 c0', '8 leave Z0 c0', '12 load begins S1 c0', '17 load ends S1 c0', '17 leave Z1 c0'])
})

test('a carrier that cannot start at time 0 stands blocked at its station', () => {
  // c0 in Z0 waits until Z1, left at 0, is clear at 3
  const { result } = tell(smallLoop({ zones: 4, start: [0, 1], move: 4, clear: 3, stations: [{ at: 0, work: 5 }], until: 10 }))
  // blocked 0–3, out 3–6, starved 6–10 (c1 is in Z3 from 8 and on its way in from then on)
  expect(spent(result.stations[0]!.seconds)).toEqual({ blocked: 3, exchanging: 3 + 2, starved: 2 })
})

test('the line is set back to time 0 from any state', () => {
  const spec = smallLoop({
    zones: 5,
    start: [0, 2],
    transfers: { 3: { lift: 1, lower: 1 } },
    stations: [{ at: 1, load: { fit: { kind: 'exponential', mean: 3 } } }],
    stops: [{ name: 'wear', on: { kind: 'station', index: 0 }, after: [1, 2], repair: 1 }],
    breaks: [[10, 1]],
  })
  const line = buildLine(spec)
  resetLine(line, 'a', 0)
  for (let k = 0; k < 40 && line.queue.size > 0; k++) {
    handleInstant(line)
    line.now = line.queue.times[line.queue.first()]!
  }
  resetLine(line, 'a', 0)
  expect([line.now, line.events, line.activity, line.goods.nextSerial, line.stops.breaksNow, line.sections.sectionUntil[0]]).toEqual([
    0, 0, 0, 0, 0, 0,
  ])
  expect([...line.moves.zoneCarrier.subarray(0, 5)]).toEqual([0, NONE, 1, NONE, NONE])
  expect([...line.moves.zoneState.subarray(0, 5)]).toEqual([OCCUPIED, FREE, OCCUPIED, FREE, FREE])
  expect([...line.moves.carrierPhase]).toEqual([DONE, DONE])
})

test('spread and packed leave exit-clear transfers out, on any graph', () => {
  const wish = (rule: 'spread' | 'packed') =>
    smallGraph({
      zones: 5,
      start: { count: 3, rule },
      paths: chain(0, 1, 2, 3, 0),
      transfers: { 2: { lift: 1, lower: 1, exitClear: true } },
    })
  expect(startZones(wish('spread'))).toEqual([0, 1, 3])
  expect(startZones(wish('packed'))).toEqual([0, 1, 3])
  expect(startZones({ ...wish('spread'), carriers: { ...wish('spread').carriers, count: 2 } })).toEqual([0, 3])
})
