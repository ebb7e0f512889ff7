import { expect, test } from 'vitest'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { simulate } from '../simulate.ts'
import * as trace from './trace.ts'

test('the numbers of the kinds are places in the list', () => {
  const numbers = Object.entries(trace).flatMap(([name, value]) => (typeof value === 'number' ? [[name, value] as const] : []))
  expect(numbers).toHaveLength(trace.TRACE_KINDS.length)
  for (const [name, number] of numbers) {
    const kind = name === 'AT_REST' ? 'rest' : name.toLowerCase().replace('_', ' ')
    expect(trace.TRACE_KINDS[number]).toBe(kind)
  }
})

test('events are kept column by column, and hashed in order', () => {
  const t = new trace.Trace()
  const empty = t.hash.digest()
  t.add(1.5, trace.MOVE_START, 2, 0, 1)
  t.add(2, trace.CLEAR, 2, -1, 0)
  expect([t.length, t.seconds, t.kinds, t.places, t.carriers, t.details]).toEqual([2, [1.5, 2], [0, 1], [2, 2], [0, -1], [1, 0]])
  const digest = t.hash.digest()
  const other = new trace.Trace()
  other.add(2, trace.CLEAR, 2, -1, 0)
  other.add(1.5, trace.MOVE_START, 2, 0, 1)
  expect(other.hash.digest()).not.toBe(digest)
  t.reset()
  expect([t.length, t.hash.digest()]).toEqual([0, empty])
})

test('every field of an event counts in the hash', () => {
  const hash = (fields: [number, number, number, number, number]) => {
    const t = new trace.Trace()
    t.add(...fields)
    return t.hash.digest()
  }
  const hashes = [hash([1, 2, 3, 4, 5]), ...[0, 1, 2, 3, 4].map((k) => hash([1, 2, 3, 4, 5].map((x, j) => (j === k ? x + 1 : x)) as never))]
  expect(new Set(hashes).size).toBe(6)
})

test('a trace of a run has times in order and starts anew with each run', () => {
  const spec = smallLoop({ zones: 4, start: [0, 1], stations: [{ at: 2, load: 3 }] })
  const t = new trace.Trace()
  simulate(spec, { seed: 'a', replication: 0, trace: t })
  expect(t.seconds).toEqual([...t.seconds].sort((a, b) => a - b))
  const [length, digest] = [t.length, t.hash.digest()]
  simulate(spec, { seed: 'a', replication: 0, trace: t })
  expect([t.length, t.hash.digest()]).toEqual([length, digest])
})
