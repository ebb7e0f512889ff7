import { expect, test } from 'vitest'
import { workedBetween, workingHours } from './workingHours.ts'

const at = (text: string) => Date.parse(`${text}:00Z`) / 1000
const hours = (text: string) => {
  const read = workingHours(text)
  if (!read.ok) throw new Error(read.reason)
  return read.value
}

test('working time of days, weeks and shifts past midnight', () => {
  const early = hours('Mon-Fri 06:00-14:00')
  // 2026-11-06 is a Friday
  expect(workedBetween(at('2026-11-06 13:00'), at('2026-11-09 07:00'), early)).toBe(2 * 3600)
  expect(workedBetween(at('2026-11-02 00:00'), at('2026-11-09 00:00'), early)).toBe(40 * 3600)
  const night = hours('22:00-06:00')
  expect(workedBetween(at('2026-11-03 23:00'), at('2026-11-04 07:00'), night)).toBe(7 * 3600)
  expect(workedBetween(100, 50, null)).toBe(0)
})

test('days of their own hours', () => {
  const short = hours('Mon-Thu 06:00-14:00, 14:00-22:00; Fri 06:00-12:00')
  expect(workedBetween(at('2026-11-02 00:00'), at('2026-11-06 00:00'), short)).toBe(64 * 3600)
  expect(workedBetween(at('2026-11-06 00:00'), at('2026-11-09 00:00'), short)).toBe(6 * 3600)
  expect(hours('Mon-Fri 06:00-14:00, Mon-Fri 14:00-22:00')).toEqual(hours('Mon-Fri 06:00-14:00, 14:00-22:00'))
  const nights = hours('Mon-Fri 22:00-06:00, Sat 06:00-10:00')
  expect(workedBetween(at('2026-11-06 22:00'), at('2026-11-08 00:00'), nights)).toBe(12 * 3600)
})

test.each([
  '06:00-14:00, Fri 06:00-12:00',
  'Mon-Fri 22:00-06:00, Sat 05:00-10:00',
  '6-14',
  '06:00-06:00',
  'Xyz 06:00-14:00',
  'Fri-Mon 06:00-14:00',
  '06:00-14:00, 13:00-15:00',
  '22:00-06:00, 05:00-09:00',
  '',
])('%j is refused', (text) => expect(workingHours(text).ok).toBe(false))
