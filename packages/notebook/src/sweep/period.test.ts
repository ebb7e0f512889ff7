import { expect, test } from 'vitest'
import { period } from './period.ts'

const calendar = { judged: 'second shift', grossSeconds: 30_000, netSeconds: 27_000, taktSeconds: null }

test('a shift is called so where exactly one is judged', () => {
  expect(period({ calendar: { ...calendar, shifts: 1 }, plan: null })).toEqual({ one: 'shift', many: 'shifts', plan: null })
  expect(period({ calendar: { ...calendar, shifts: 2 }, plan: null }).one).toBe('window')
  expect(period({ calendar: null, plan: { units: 40, per: 'net hour', unitsPerWindow: 300 } })).toEqual({
    one: 'window',
    many: 'windows',
    plan: 300,
  })
})
