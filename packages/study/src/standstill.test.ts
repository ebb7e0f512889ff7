import { type LineSpec, type RunEnd, simulate } from '@loopwright/line'
import { expect, test } from 'vitest'
import { chain, smallGraph } from '../../../tests/helpers/smallGraph.ts'
import { smallLoop } from '../../../tests/helpers/smallLoop.ts'
import { standstillOf } from './standstill.ts'

const endOf = (spec: LineSpec): RunEnd => simulate(spec, { seed: '1', replication: 0 }).end

test('a loop whose places are all taken: too many carriers', () => {
  const transfers = { 1: { lift: 1, lower: 1, exitClear: true } }
  const spec = smallLoop({ zones: 3, start: [0, 2], transfers, move: 1, clear: 1 })
  expect(standstillOf(spec, endOf(spec))).toEqual({ reason: 'too many carriers', circle: [0, 2], behind: [], merge: null, unmanned: [] })
})

test('a circle through a zone with two ways in: the merge fills its own exit; the other way waits behind', () => {
  const spec = smallGraph({ zones: 3, start: [0, 1, 2], paths: chain(0, 1, 2, 1), move: 4, clear: 3 })
  expect(standstillOf(spec, endOf(spec))).toEqual({
    reason: 'merge fills its own exit',
    circle: [1, 2],
    behind: [0],
    merge: 1,
    unmanned: [],
  })
})

test('no circle, but a zone that waits for one without a way on', () => {
  const end: RunEnd = { reason: 'gridlock', atSeconds: 4, waits: [[0, 2]], cycle: [], unmanned: [] }
  expect(standstillOf({ paths: [] }, end)).toEqual({ reason: 'no way on', circle: [], behind: [0], merge: null, unmanned: [] })
})

test('a run that went on to its end has no reason', () => {
  expect(standstillOf({ paths: [] }, { reason: 'end of window', atSeconds: null, waits: [], cycle: [], unmanned: [] })).toBeNull()
})

test('work that needs more operators than cover it: nobody is free', () => {
  const end: RunEnd = { reason: 'gridlock', atSeconds: 4, waits: [], cycle: [], unmanned: [1] }
  expect(standstillOf({ paths: [] }, end)).toMatchObject({ reason: 'nobody is free', unmanned: [1] })
})
