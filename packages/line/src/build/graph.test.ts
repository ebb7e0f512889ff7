import { expect, test } from 'vitest'
import { smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { buildGraph, isPlainLoop } from './graph.ts'
import { STOPS_ALWAYS, STOPS_NEVER, STOPS_PERHAPS } from '../state/graph.ts'
import { NONE, type PartList } from '../state/lists.ts'

const lists = ({ first, items }: PartList): number[][] =>
  Array.from({ length: first.length - 1 }, (_, part) => [...items.subarray(first[part]!, first[part + 1]!)])

test('a plain loop is one in which path i leads to the next zone and takes everybody', () => {
  const loop = smallLoop({ zones: 3, start: [0] })
  expect(isPlainLoop(loop)).toBe(true)
  expect(isPlainLoop({ ...loop, paths: [...loop.paths].reverse() })).toBe(false)
  const takes = { ...loop.paths[0]!.takes, load: 'empty' as const }
  expect(isPlainLoop({ ...loop, paths: loop.paths.map((path) => ({ ...path, takes })) })).toBe(false)
  expect(lists(buildGraph(loop).graph.feeders)).toEqual([[2], [0], [1], []])
})

// Z0 leads to Z1 or, loaded, to Z2; both lead to Z3, an exit-clear transfer; Z3 leads to Z4, and that to the store, which feeds Z0.
const spec = smallGraph({
  zones: 5,
  start: ['store'],
  transfers: { 1: { lift: 1, lower: 1 }, 3: { lift: 1, lower: 2, exitClear: true } },
  paths: [
    { from: 'store', to: 0 },
    { from: 0, to: 1 },
    { from: 0, to: 2, takes: { load: 'loaded' } },
    { from: 1, to: 3, out: 'high' },
    { from: 2, to: 3, in: 'high' },
    { from: 3, to: 4, out: 'high' },
    { from: 4, to: 'store' },
  ],
})

test('ways out and in, and who may claim a zone, also through an exit-clear transfer; the store comes after the zones', () => {
  const { graph } = buildGraph(spec)
  expect([graph.pathTo.length, graph.isLoop]).toEqual([7, false])
  expect(lists(graph.outs)).toEqual([[1, 2], [3], [4], [5], [6], [0]])
  expect(lists(graph.ins)).toEqual([[0], [1], [2], [3, 4], [5], [6]])
  expect([...graph.onlyOut]).toEqual([NONE, 3, 4, 5, 6, 0])
  expect(lists(graph.feeders)).toEqual([[5], [0], [0], [1, 2], [3, 1, 2], [4]])
  expect([...graph.pathIsChosen]).toEqual([0, 0, 1, 0, 0, 0, 0])
})

test('where all ways out have conditions, or one of them is by hand, it is asked whether a carrier stops', () => {
  const whole = {
    ...spec,
    paths: spec.paths.map((path, p) => (p === 1 ? { ...path, takes: { ...path.takes, load: 'empty' as const } } : path)),
  }
  expect(buildGraph(whole).graph.pathStops[0]).toBe(STOPS_PERHAPS)
  const byHand = {
    ...spec,
    paths: spec.paths.map((path, p) => (p === 2 ? { ...path, manual: { kind: 'push' as const, station: 0 } } : path)),
  }
  expect(buildGraph(byHand).graph.pathStops[0]).toBe(STOPS_PERHAPS)
})

test('where a carrier stops, and how a transfer stands', () => {
  const { graph, changes } = buildGraph(spec)
  // into Z0, which has a way out for everybody; into Z1: lifts; Z3 from Z2 needs no change; the store
  expect([...graph.pathStops]).toEqual([STOPS_NEVER, STOPS_ALWAYS, STOPS_NEVER, STOPS_ALWAYS, STOPS_NEVER, STOPS_NEVER, STOPS_ALWAYS])
  // Z1 has one way in, low; Z3 has two of different positions: it rests
  expect([...changes.zoneChanges]).toEqual([0, 1, 0, 1, 0, 0])
  expect([...changes.zoneRests]).toEqual([0, 0, 0, 1, 0, 0])
  expect([...changes.backPosition]).toEqual([NONE, 0, NONE, NONE, NONE, NONE])
  expect([...changes.changeSeconds.subarray(6, 8)]).toEqual([2, 1])
})
