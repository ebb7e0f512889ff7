import { expect, test } from 'vitest'
import { splitSpans, type TimelinePause } from './timelinePause.ts'

const span = (from: number, to: number, zone = 1) => ({ carrier: 3, zone, from, to })
const pause = (from: number, to: number, zones: readonly number[]): TimelinePause => ({
  name: 'stop',
  from,
  to,
  zones,
  work: zones,
  moves: [],
})

test('what lies in a pause of its zone is held, the rest is free', () => {
  const { free, held } = splitSpans([span(0, 100), span(0, 100, 2)], [pause(20, 30, [1])], 'work')
  expect(free).toEqual([span(0, 20), span(30, 100), span(0, 100, 2)])
  expect(held).toEqual([span(20, 30)])
})

test('pauses that overlap hold once; one that begins before and ends after holds all', () => {
  const { free, held } = splitSpans([span(10, 60)], [pause(20, 40, [1]), pause(30, 50, [1])], 'work')
  expect([free, held]).toEqual([
    [span(10, 20), span(50, 60)],
    [span(20, 40), span(40, 50)],
  ])
  expect(splitSpans([span(10, 60)], [pause(0, 90, [1])], 'work')).toEqual({ free: [], held: [span(10, 60)] })
})

test('a pause that holds work alone leaves waits as they are', () => {
  expect(splitSpans([span(0, 9)], [pause(0, 9, [1])], 'moves').held).toEqual([])
})
