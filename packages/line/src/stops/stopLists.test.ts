import { expect, test } from 'vitest'
import { chain, smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { type StopWish, smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { buildBreaks, listByPart, plainClears } from './stopLists.ts'

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

test('a clear needs a timer in any case where a stop can hold its move, an operating clock follows it, or a transfer turns back after it', () => {
  const plain = (stops: StopWish[], changes = [0, 0, 0, 0], breaks: [number, number][] = [], conveyorStops = false) => {
    const spec = smallLoop({ zones: 4, stations: [{ at: 0, load: 1 }], stops, breaks, conveyorStops })
    return [...plainClears(spec, true, Uint8Array.from(changes))].join('')
  }
  expect(plain([])).toBe('1111')
  expect(plain([stop('a', { kind: 'station', index: 0 })])).toBe('1111')
  // a stop of Z2 holds the moves 1 → 2 and 2 → 3
  expect(plain([stop('a', { kind: 'zone', index: 2 }, 'calendar')])).toBe('1001')
  expect(plain([stop('a', { kind: 'transfer', index: 0 })])).toBe('0110')
  expect(plain([stop('a', { kind: 'zone', index: 2 })])).toBe('0000')
  expect(plain([stop('a', { kind: 'section', index: 0 }, 'calendar')])).toBe('0000')
  expect(plain([], [0, 1, 0, 0])).toBe('1011')
  expect(plain([], [0, 0, 0, 0], [[1, 1]])).toBe('1111')
  expect(plain([], [0, 0, 0, 0], [[1, 1]], true)).toBe('0000')
})

test('in a graph: none out of the store, by hand, or behind a transfer that is entered only if its exit is clear', () => {
  const exit = { lift: 1, lower: 1, exitClear: true } as const
  const spec = smallGraph({ zones: 3, start: [0], transfers: { 0: exit }, paths: chain('store', 0, 1, 2, 'store') })
  const changes = new Uint8Array(4)
  expect([...plainClears(spec, false, changes)]).toEqual([0, 1, 0, 1])
  const byHand = spec.paths.map((path, p) => ({ ...path, manual: p === 3 ? ({ kind: 'push', station: 0 } as const) : null }))
  expect([...plainClears({ ...spec, paths: byHand }, false, changes)]).toEqual([0, 1, 0, 0])
})
