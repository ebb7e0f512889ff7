/** What a duty waits for, in order, worked out by hand from MODEL.md §6 and §8. */
import { expect, test } from 'vitest'
import { smallLoop, tell, timeline, type Wish } from '../../../../tests/helpers/smallLoop.ts'
import type { LineSpec } from '../spec.ts'
import { spent } from '../../../../tests/helpers/spent.ts'

const LOOP: Wish = {
  zones: 4,
  start: [0],
  move: 4,
  clear: 3,
  stations: [
    { at: 1, load: 3, work: 2 },
    { at: 3, unload: 2 },
  ],
  until: 40,
}
const withAnna = (spec: LineSpec, seconds = 5): LineSpec => ({
  ...spec,
  operators: [{ name: 'anna', stations: [0, 1], start: 1 }],
  walks: [{ between: [0, 1], seconds }],
})

test('the product is set aside first, then the operator is called; the operator stays for the later duties', () => {
  // at rest in Z1 at 4; product at 10; anna sets off at 10, is there at 15: load to 18, work to 20; S3: at rest at 28, anna there at 33
  const spec: LineSpec = {
    ...withAnna(smallLoop(LOOP)),
    supply: { name: 'supply', arrivals: { kind: 'list', instants: [10, 30] }, queueLimit: null },
  }
  expect(timeline(spec).filter((line) => !/ (clear|leave|rest|take) /.test(line))).toEqual([
    '10 product comes to supply 0',
    '10 send anna to S1',
    '15 anna at S1',
    '15 load begins S1 c0',
    '18 load ends S1 c0',
    '18 work begins S1 c0',
    '20 work ends S1 c0',
    '20 anna free',
    '28 send anna to S3',
    '30 product comes to supply 0',
    '33 anna at S3',
    '33 unload begins S3 c0',
    '35 unload ends S3 c0',
    '35 off p0 c0',
    '35 anna free',
  ])
  // S1: exchanging 0–4, no product 4–10, no operator 10–15, working 15–20, exchanging 20–23, starved; S3's carrier leaves at 35 and is in Z0 at 39
  expect(spent(tell(spec).result.stations[0]!.seconds)).toEqual({
    working: 5,
    'waiting for operator': 5,
    'waiting for product': 6,
    exchanging: 8,
    starved: 16,
  })
})

test('from the instant at which its product is set aside a station waits for its operator, also where nobody is free', () => {
  // anna loads c1 in Z3 4–24. S1: at rest at 4, product at 10, anna there at 29, load to 32.
  const stations = [
    { at: 1, load: 3 },
    { at: 3, load: 20 },
  ]
  const spec = withAnna(smallLoop({ ...LOOP, start: [0, 2], stations, until: 32 }))
  const supply = { name: 'S1 parts', arrivals: { kind: 'list', instants: [10] } as const, queueLimit: null }
  const arriving: LineSpec = { ...spec, stations: spec.stations.map((station, s) => (s === 0 ? { ...station, supply } : station)) }
  expect(spent(tell(arriving).result.stations[0]!.seconds)).toEqual({
    working: 3,
    'waiting for operator': 29 - 10,
    'waiting for product': 10 - 4,
    exchanging: 4,
  })
})

test('a duty that needs neither product nor receiver calls at arrival, also in a break; one that does calls at its end', () => {
  // break 3–20. S1 loads: it is held, so nothing is set aside before 20. S3 unloads with no receiver; c1 is empty and passes it.
  const spec = withAnna(smallLoop({ ...LOOP, breaks: [[3, 17]] }), 0)
  expect(timeline(spec, 'send', 'load')).toEqual(['20 send anna to S1', '20 load begins S1 c0', '23 load ends S1 c0', '33 send anna to S3'])
})

test('the last product of a list is set aside for a station that waits, before a lower one has unloaded in no time', () => {
  // c0 is loaded in Z1 4–7 and at rest in Z3 at 15; c1 is at rest in Z1 at 14; break 12–30. At 30 S1 waits for the last product and has it, although S3, which
  // comes before it, could unload in 0 s and would then want it too.
  const spec = smallLoop({
    zones: 4,
    start: [0, 3],
    move: 4,
    clear: 3,
    stations: [
      { at: 3, unload: true, load: 3 },
      { at: 1, load: 3 },
    ],
    mix: { kind: 'list', sequence: [0, 0] },
    breaks: [[12, 18]],
    until: 60,
  })
  expect(timeline(spec, 'take', 'off')).toEqual(['4 take p0 c0', '30 off p0 c0', '30 take p1 c1'])
})
