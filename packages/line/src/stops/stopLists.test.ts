import { expect, test } from 'vitest'
import { chain, smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { type StopWish, smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { buildBreaks, listByPart, neverHeld, plainClears } from './stopLists.ts'

const stop = (name: string, on: StopWish['on'], clock: 'operating' | 'calendar' = 'operating'): StopWish => ({
  name,
  on,
  clock,
  after: 1,
  repair: 1,
})

test('breaks become steps in order of time, ends before begins, none of no length', () => {
  const breaks: [number, number][] = [
    [9, 3],
    [5, 4],
    [7, 0],
    [6, 10],
  ]
  const { breakTimes, breakSteps } = buildBreaks(smallLoop({ zones: 2, breaks, odd: true }))
  expect([...breakTimes]).toEqual([5, 6, 9, 9, 12, 16])
  expect([...breakSteps]).toEqual([1, 1, -1, 1, -1, -1])
})

test('operating clocks are listed by part; calendar clocks are not', () => {
  const spec = smallLoop({
    zones: 3,
    stations: [{ at: 2, load: 1 }],
    stops: [
      stop('a', { kind: 'station', index: 0 }),
      stop('b', { kind: 'zone', index: 1 }),
      stop('c', { kind: 'zone', index: 1 }, 'calendar'),
      stop('d', { kind: 'zone', index: 1 }),
      stop('e', { kind: 'transfer', index: 2 }),
      stop('f', { kind: 'section', index: 0 }),
    ],
  })
  const listed = (kind: string, parts: number) => {
    const { first, items } = listByPart(spec, kind, parts)
    return Array.from({ length: parts }, (_, part) => [...items.subarray(first[part]!, first[part + 1]!)])
  }
  expect(listed('station', 1)).toEqual([[0]])
  expect(listed('zone', 3)).toEqual([[], [1, 3], []])
  expect(listed('transfer', 3)).toEqual([[], [], [4]])
})

test('no stop can hold a move, where none is on its zones or sections, breaks let the conveyor run, and no operating clock follows it', () => {
  const never = (stops: StopWish[], breaks: [number, number][] = [], conveyorStops = false) =>
    [...neverHeld(smallLoop({ zones: 4, stations: [{ at: 0, load: 1 }], stops, breaks, conveyorStops }))].join('')
  expect(never([])).toBe('1111')
  expect(never([stop('a', { kind: 'station', index: 0 })])).toBe('1111')
  // a stop of Z2 holds the moves 1 → 2 and 2 → 3
  expect(never([stop('a', { kind: 'zone', index: 2 }, 'calendar')])).toBe('1001')
  expect(never([stop('a', { kind: 'transfer', index: 0 })])).toBe('0110')
  expect(never([stop('a', { kind: 'zone', index: 2 })])).toBe('0000')
  expect(never([stop('a', { kind: 'section', index: 0 }, 'calendar')])).toBe('0000')
  expect(never([], [[1, 1]])).toBe('1111')
  expect(never([], [[1, 1]], true)).toBe('0000')
})

test('a clear needs a timer in any case where a transfer turns back after it', () => {
  const spec = smallLoop({ zones: 4, stations: [{ at: 0, load: 1 }], stops: [stop('a', { kind: 'section', index: 0 })] })
  expect([...plainClears(spec, true, Uint8Array.from([0, 1, 0, 0]))]).toEqual([1, 0, 1, 1])
})

test('a clear that a stop can hold needs one where a start ahead may count on it', () => {
  // a stop of Z3 can hold the moves 2 → 3 and 3 → 4; the move 1 → 2 goes into the zone that the first of them leaves
  const spec = smallLoop({ zones: 6, stations: [{ at: 0, load: 1 }], stops: [stop('a', { kind: 'zone', index: 3 }, 'calendar')] })
  expect([...neverHeld(spec)]).toEqual([1, 1, 0, 0, 1, 1])
  expect([...plainClears(spec, true, new Uint8Array(7))]).toEqual([1, 1, 0, 1, 1, 1])
})

test('in a graph: none out of the store, by hand, or behind a transfer that is entered only if its exit is clear', () => {
  const exit = { lift: 1, lower: 1, exitClear: true } as const
  const spec = smallGraph({ zones: 3, start: [0], transfers: { 0: exit }, paths: chain('store', 0, 1, 2, 'store') })
  const changes = new Uint8Array(4)
  expect([...plainClears(spec, false, changes)]).toEqual([0, 1, 0, 1])
  const byHand = spec.paths.map((path, p) => ({ ...path, manual: p === 3 ? ({ kind: 'push', station: 0 } as const) : null }))
  expect([...plainClears({ ...spec, paths: byHand }, false, changes)]).toEqual([0, 1, 0, 0])
})
