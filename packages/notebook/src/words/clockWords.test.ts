import { expect, test } from 'vitest'
import { clockText } from './clockWords.ts'

const starts = [
  { seconds: 0, clockSeconds: 6 * 3600 },
  { seconds: 28_800, clockSeconds: 22 * 3600 },
]

test('the hour of the day, by the shift that the instant lies in', () => {
  expect(clockText(starts, 7200)).toBe('08:00')
  expect(clockText(starts, 7245)).toBe('08:00:45')
  expect(clockText(starts, 28_800 + 3 * 3600)).toBe('01:00')
  expect(clockText([], 7200)).toBeNull()
})

test('between two shifts that do not meet, an end is the hour of the end', () => {
  expect(clockText(starts, 28_800)).toBe('22:00')
  expect(clockText(starts, 28_800, true)).toBe('14:00')
})
