/** Right of way by MODEL.md §3, by hand. Moves of 4 s and clears of 1 s given. */
import { expect, test } from 'vitest'
import { chain, type GraphWish, smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { timeline } from '../../../../tests/helpers/smallLoop.ts'

const GIVEN = { move: 4, clear: 1 }
// Z0 and Z1 lead into Z2, which leads to Z3; from there back by Z4 to Z0, or not at all.
const paths = [...chain(0, 2), ...chain(1, 2, 3)]
const leaves = (wish: Omit<GraphWish, 'zones' | 'paths'>) =>
  timeline(smallGraph({ zones: 4, paths, ...GIVEN, until: 20, ...wish }), 'leave')

test('waiting: who has waited longest, then the lower path index', () => {
  // both since 0: path 0 first; Z2 is clear again at 5
  expect(leaves({ start: [1, 0] })).toEqual(['0 leave Z0 c1', '4 leave Z2 c1', '5 leave Z1 c0'])
})

test('priority: the first zone of the list', () => {
  expect(leaves({ start: [1, 0], merges: { 2: { kind: 'priority', from: [1] } } })).toEqual([
    '0 leave Z1 c0',
    '4 leave Z2 c0',
    '5 leave Z0 c1',
  ])
})

test('priority keeps nobody waiting for a carrier that cannot start yet', () => {
  // Z1 loads until 4 + 3; Z0 starts at 0 all the same
  const long: GraphWish = {
    zones: 5,
    paths: [...paths, ...chain(4, 1)],
    ...GIVEN,
    start: [4, 0],
    stations: [{ at: 1, load: 3 }],
    merges: { 2: { kind: 'priority', from: [1] } },
    until: 20,
  }
  expect(timeline(smallGraph(long), 'leave')).toEqual(['0 leave Z0 c1', '0 leave Z4 c0', '4 leave Z2 c1', '7 leave Z1 c0'])
})

test('alternate: not the path used last', () => {
  // Z0 → Z2 at 0. At 5 Z2 is clear. c1 stands in Z0 since 1 + 0 = 1, c2 comes to Z1 at 3 (by a move of 3 s): by waiting c1 goes first.
  const lanes: GraphWish = {
    zones: 6,
    paths: [...chain(0, 2), ...chain(1, 2, 3), { from: 4, to: 0, move: 0 }, { from: 5, to: 1, move: 3 }],
    start: [0, 4, 5],
    ...GIVEN,
    until: 10,
  }
  const into = (merge: NonNullable<GraphWish['merges']>[number]) =>
    timeline(smallGraph({ ...lanes, merges: { 2: merge } }), 'leave').filter((line) => / Z[01] /.test(line))
  expect(into({ kind: 'waiting' })).toEqual(['0 leave Z0 c0', '5 leave Z0 c1'])
  expect(into({ kind: 'alternate' })).toEqual(['0 leave Z0 c0', '5 leave Z1 c2'])
})
