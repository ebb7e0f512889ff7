import { describe, expect, test } from 'vitest'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { buildLine } from './build.ts'
import type { LineSpec } from '../spec.ts'
import { NONE } from '../state/lists.ts'
import { SAME_AS_MOVE } from '../state/moves.ts'

const changed = (spec: LineSpec, path: number, change: Partial<LineSpec['paths'][number]>): LineSpec => ({
  ...spec,
  paths: spec.paths.map((p, k) => (k === path ? { ...p, ...change } : p)),
})

describe('lines that cannot be built', () => {
  const spec = smallLoop({ zones: 3, start: [0] })
  test('a path that leads nowhere, to its own beginning, or to a station that there is not', () => {
    expect(() => buildLine(changed(spec, 1, { to: 3 }))).toThrow('path 1 leads from 1 to 3, but the zones are 0 to 2')
    expect(() => buildLine(changed(spec, 1, { from: -2 }))).toThrow('path 1 leads from -2 to 2')
    expect(() => buildLine(changed(spec, 1, { to: 1 }))).toThrow('path 1 leads from a place to itself')
    const takes = { ...spec.paths[1]!.takes, forStation: 0 }
    expect(() => buildLine(changed(spec, 1, { takes }))).toThrow('path 1 takes carriers for station 0, which there is not')
  })
  test('as many carriers as zones', () => {
    expect(() => buildLine(smallLoop({ zones: 3, start: 3 }))).toThrow('3 carriers in 3 zones cannot move')
  })
  test('a time that is neither given nor derivable', () => {
    const bare = { speedMetresPerSecond: null } as const
    expect(() => buildLine(changed(spec, 1, bare))).toThrow('the move out of zone Z1 is neither given nor can it be derived')
    expect(() => buildLine(changed(spec, 1, { ...bare, moveSeconds: { kind: 'constant', value: 1 } }))).toThrow('the clear out of zone Z1')
    expect(() => buildLine(changed(spec, 1, { clearSeconds: 'move' }))).toThrow('the clear out of zone Z1 is the draw of its move')
  })
  test('two stations in one zone', () => {
    const stations = [
      { at: 1, load: 1 },
      { at: 1, work: 1, name: 'other' },
    ]
    expect(() => buildLine(smallLoop({ zones: 3, start: [0], stations, odd: true }))).toThrow('two stations stand in zone Z1')
  })
})

test('timers: sources, breaks, arrivals and clears by path, work by station, changes by zone', () => {
  const line = buildLine(
    smallLoop({
      zones: 4,
      start: [0],
      stations: [{ at: 1, load: 1 }],
      stops: [{ name: 'wear', on: { kind: 'section', index: 0 }, after: 1, repair: 1 }],
    }),
  )
  expect([
    line.slots.breakSlot,
    line.slots.arrivalSlot,
    line.slots.clearSlot,
    line.slots.workSlot,
    line.slots.changeSlot,
    line.queue.capacity,
  ]).toEqual([1, 2, 6, 10, 11, 15])
})

test('given times get samplers and streams by the name of the zone left', () => {
  const line = buildLine(smallLoop({ zones: 3, start: [0], move: [null, 2, 3], clear: [1, 'move', null] }))
  expect([...line.moves.moveSampler].map((s) => s === NONE)).toEqual([true, false, false])
  expect([...line.moves.clearSampler].map((s) => (s === NONE ? 'drive' : s === SAME_AS_MOVE ? 'move' : 'given'))).toEqual([
    'given',
    'move',
    'drive',
  ])
  expect(line.draws.streams.names).toEqual(['clear/Z0', 'move/Z1', 'move/Z2', 'mix'])
})

test('a release of 0 s is none and has no stream', () => {
  const line = buildLine(
    smallLoop({
      zones: 4,
      start: [0],
      stations: [
        { at: 1, load: 1 },
        { at: 2, work: 1, release: 2 },
        { at: 3, unload: 1, release: 2 ** -22 },
      ],
    }),
  )
  expect([...line.work.releaseSampler].map((s) => s === NONE)).toEqual([true, false, true])
  expect(line.draws.streams.names.filter((name) => name.startsWith('release'))).toEqual(['release/S2'])
})

test('a transfer changes where its ways in and out need different positions, each way with its own time', () => {
  const line = buildLine(
    smallLoop({
      zones: 5,
      start: [0],
      transfers: {
        1: { lift: 2, lower: 1.5 },
        2: { lift: 2, lower: 1.5, in: 'high', out: 'low' },
        3: { lift: 2, lower: 1, out: 'low', exitClear: true },
      },
    }),
  )
  expect([...line.transfers.zoneChanges]).toEqual([0, 1, 1, 0, 0, 0])
  expect([...line.transfers.changeSeconds.subarray(2, 6)]).toEqual([1.5, 2, 1.5, 2])
  expect([...line.transfers.startPosition.subarray(0, 4)]).toEqual([0, 0, 1, 0])
  expect([...line.transfers.backPosition.subarray(0, 4)]).toEqual([-1, 0, 1, -1])
  expect([...line.graph.exitClear]).toEqual([0, 0, 0, 1, 0, 0])
})
