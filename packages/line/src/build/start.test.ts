/** What holds at time 0, and that a line can be set back to it: MODEL.md §10. */
import { expect, test } from 'vitest'
import { smallLoop, tell, timeline } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from './build.ts'
import { handleInstant } from '../instant/instant.ts'
import { resetLine } from './start.ts'
import { NONE } from '../state/lists.ts'
import { DONE, FREE, OCCUPIED } from '../state/moves.ts'
import { spent } from '../../../../tests/helpers/spent.ts'

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
