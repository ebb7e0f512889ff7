import { expect, test } from 'vitest'
import { smallGraph } from '../../../../tests/helpers/smallGraph.ts'
import { lineNoun, type Named, period } from './period.ts'

const line = { window: { warmupSeconds: 3600, endSeconds: 32_400 }, zones: [], paths: [] } as unknown as Named['line']
const calendar = { judged: 'late shift', grossSeconds: 30_000, netSeconds: 27_000, taktSeconds: null }

test('a shift is called so where exactly one is judged, and by its name', () => {
  expect(period({ calendar: { ...calendar, shifts: 1 }, plan: null, line })).toMatchObject({
    one: 'shift',
    each: 'a shift',
    many: 'shifts',
    plan: null,
    named: 'the late shift',
  })
  expect(period({ calendar: { ...calendar, shifts: 2 }, plan: null, line })).toMatchObject({ one: 'window', named: null })
  const named = (judged: string) => period({ calendar: { ...calendar, judged, shifts: 1 }, plan: null, line }).named
  expect(['late', 'second shift', 'shift 2', 'day 2'].map(named)).toEqual([
    'the late shift',
    'the second shift',
    'shift 2',
    'the shift of day 2',
  ])
  expect(period({ calendar: null, plan: { units: 40, per: 'net hour', unitsPerWindow: 300 }, line })).toMatchObject({
    one: 'window',
    each: 'in 8 h',
    many: 'windows',
    plan: 300,
    named: null,
  })
})

test('a line is called what it is', () => {
  const noun = (...paths: readonly (readonly [number | 'store', number | 'store'])[]) =>
    lineNoun(smallGraph({ zones: 3, move: 5, clear: 4, paths: paths.map(([from, to]) => ({ from, to })), start: [0] }))
  expect(noun([0, 1], [1, 2], [2, 0])).toBe('loop')
  expect(noun(['store', 0], [0, 1], [1, 2], [2, 'store'])).toBe('open line')
  expect(noun([0, 1], [1, 2], [2, 0], [1, 0])).toBe('line')
})
