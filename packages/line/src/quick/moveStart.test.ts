/**
 * The start of a move stands twice: `startMove` of move.ts, and `startQuick` of quickStart.ts, which works many out in one call, with the store's ends in quickStore.ts. Two copies of a line, one by each, are
 * held against each other column by column, after every few instants; what either may leave for later is made good before.
 */
import { expect, test } from 'vitest'
import { blockLoop, generalLine } from '../../../../tests/bench/lines.ts'
import { differing, valuesOf } from '../../../../tests/helpers/columnsOf.ts'
import { randomLanes } from '../../../../tests/helpers/randomLanes.ts'
import { chain, smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from '../build/build.ts'
import { resetLine } from '../build/start.ts'
import { handleInstant } from '../instant/instant.ts'
import { makeAllClear, timeClear } from '../moves/clear.ts'
import type { LineSpec } from '../spec.ts'
import type { Line } from '../state/line.ts'
import { DONE } from '../state/moves.ts'
import { runQuick } from './quick.ts'
import { makeQuick } from './quickZones.ts'

function begin(spec: LineSpec): Line {
  const line = buildLine(spec)
  resetLine(line, 'starts', 1)
  handleInstant(line)
  return line
}

/** All that a line is, by name. A clear gets its timer, times are added up to now, and what is looked up before it is used is left out. */
function whole(line: Line): Map<string, unknown> {
  makeAllClear(line)
  for (let zone = 0; zone < line.zones; zone++) timeClear(line, zone)
  line.collector.finish()
  const all = valuesOf(line)
  for (const name of [
    'moves.startPath',
    'moves.moveSince',
    'moves.moveAt',
    'work.stationDuty',
    'goods.carrierLoaded',
    'collector.causes.held',
  ])
    all.delete(`line.${name}`)
  const { carrierPhase, carrierSince } = line.moves
  all.set(
    'line.moves.carrierSince',
    Array.from(carrierSince, (since, carrier) => (carrierPhase[carrier] === DONE ? since : null)),
  )
  all.set(
    'timers',
    Array.from(line.queue.times, (time, slot) => (line.queue.isPending(slot) ? time : null)),
  )
  return all
}

const exit = { lift: 2, lower: 1, exitClear: true } as const
const LINES: readonly (readonly [string, () => LineSpec])[] = [
  ['a loop of stations', () => blockLoop(1, 8)],
  ['lanes, operators, supply, rework', () => generalLine(8)],
  [
    'transfers, entered only if their exits are clear',
    () =>
      smallLoop({
        zones: 14,
        start: 9,
        transfers: { 3: { lift: 2, lower: 1, out: 'high' }, 6: exit, 7: exit },
        stations: [
          { at: 0, unload: true, load: { kind: 'exponential', mean: 6 } },
          { at: 9, work: { kind: 'exponential', mean: 7 } },
        ],
        until: 5_000,
      }),
  ],
  [
    'from the store and back, with a bypass, watched moves, a section that stops and a zone that a carrier passes at speed',
    () => {
      const spec = smallGraph({
        zones: 6,
        start: { count: 5, rule: 'store' },
        paths: [...chain('store', 0, 1, 2, 3, 4, 'store'), ...chain(1, 5, 3)],
        diverts: { 1: 'free' },
        stations: [
          { at: 0, load: { kind: 'exponential', mean: 6 } },
          { at: 2, work: { kind: 'exponential', mean: 9 } },
          { at: 3, unload: { kind: 'exponential', mean: 4 } },
        ],
        stops: [
          { name: 'belt', on: { kind: 'section', index: 0 }, clock: 'operating', after: { kind: 'exponential', mean: 90 }, repair: 20 },
        ],
        until: 5_000,
      })
      const safetyStop = { probability: 0.05, resetSeconds: { kind: 'constant', value: 9 } } as const
      return { ...spec, stations: spec.stations.map((station) => ({ ...station, safetyStop })) }
    },
  ],
  ...[0, 1, 2, 3, 4, 5].map((k) => [`random lanes ${k}`, () => randomLanes(`${k}`)] as const),
]

test.each(LINES)('%s: the same after each start', { tags: 'long' }, (_, make) => {
  const spec = make()
  const [quickly, plainly] = [begin(spec), begin(spec)]
  const quick = makeQuick(quickly)!
  let starts = 0
  for (let k = 0, instants = 0; k < 400 && plainly.queue.size > 0; k++) {
    for (let step = 0; step <= k % 17 && plainly.queue.size > 0; step++, instants++) {
      plainly.now = plainly.queue.firstTime()
      handleInstant(plainly)
    }
    // false: it stands still, so that nothing starts any more
    if (!runQuick(quickly, quick, plainly.now)) break
    quickly.now = plainly.now
    const [one, other] = [whole(quickly), whole(plainly)]
    expect([instants, plainly.now, ...differing(one, other)]).toEqual([instants, plainly.now])
    starts = plainly.collector.movesOut.reduce((sum, count) => sum + count, 0)
  }
  expect(starts).toBeGreaterThan(60)
})
