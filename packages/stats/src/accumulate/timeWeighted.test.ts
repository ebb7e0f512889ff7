import { expect, test } from 'vitest'
import { timeWeightedMean } from './timeWeighted.ts'

const changes = [
  { time: 0, value: 4 },
  { time: 30, value: 6 },
]

test('a change at the start counts as made before it, one at the end not at all', () => {
  expect(timeWeightedMean(changes, 30, 40)).toBe(6)
  expect(timeWeightedMean(changes, 20, 30)).toBe(4)
})

test('a window without length, an unknown start, times that go back are refused', () => {
  expect(() => timeWeightedMean(changes, 30, 30)).toThrow('The window from 30 to 30 has no length')
  expect(() => timeWeightedMean(changes, Number.NaN, 30)).toThrow(expect.objectContaining({ code: 'E_DOMAIN' }))
  expect(() => timeWeightedMean(changes.slice(1), 20, 40)).toThrow('No value is known at 20')
  expect(() => timeWeightedMean([], 20, 40)).toThrow('No value is known at 20')
  expect(() => timeWeightedMean([...changes].reverse(), 30, 40)).toThrow('The time 0 in row 2 lies before the one above it')
})
