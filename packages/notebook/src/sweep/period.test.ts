import { expect, test } from 'vitest'
import { period } from './period.ts'

const line = { window: { warmupSeconds: 3600, endSeconds: 32_400 } }
const calendar = { judged: 'second shift', grossSeconds: 30_000, netSeconds: 27_000, taktSeconds: null }

test('a shift is called so where exactly one is judged', () => {
  expect(period({ calendar: { ...calendar, shifts: 1 }, plan: null, line })).toEqual({
    one: 'shift',
    each: 'a shift',
    many: 'shifts',
    plan: null,
  })
  expect(period({ calendar: { ...calendar, shifts: 2 }, plan: null, line }).one).toBe('window')
  expect(period({ calendar: null, plan: { units: 40, per: 'net hour', unitsPerWindow: 300 }, line })).toEqual({
    one: 'window',
    each: 'in 8 h',
    many: 'windows',
    plan: 300,
  })
})
