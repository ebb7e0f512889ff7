import { expect, test } from 'vitest'
import { textCell } from '../table/rawTable.ts'
import { dayOrder, instantOfText, instantText, readInstant } from './instant.ts'

const of = (text: string, order: Parameters<typeof readInstant>[1] = null) => {
  const read = readInstant(textCell(text), order)
  return read.ok ? (read.value.is === 'clock' ? read.value.seconds : instantText(read.value.seconds)) : read.reason
}

test.each([
  ['2026-11-03 06:12', '2026-11-03 06:12'],
  ['2026-11-03T06:12:30', '2026-11-03 06:12'],
  ['03.11.2026 06:12', '2026-11-03 06:12'],
  ['3.11.26', '2026-11-03 00:00'],
  ['6:12', 22_320],
  ['6:12:30 PM', 65_550],
  ['12:05 am', 300],
  ['24:00', 86_400],
  ['31.02.2026', 'there is no day "31.02.2026"'],
  ['25:10', '"25:10" is no time of a day'],
  ['soon', '"soon" is no day or time'],
])('%s', (text, expected) => expect(of(text)).toBe(expected))

test('day or month first: by the column, else not at all', () => {
  expect(of('03/11/2026')).toContain('the day or the month may come first')
  expect(of('03/11/2026', 'day first')).toBe('2026-11-03 00:00')
  expect(of('03/11/2026 6:12 AM', 'month first')).toBe('2026-03-11 06:12')
  expect(dayOrder(['03/11/2026', '04/11/2026'])).toBeNull()
  expect(dayOrder(['03/11/2026', '03/25/2026'])).toBe('month first')
  expect(dayOrder(['25/03/2026', '03/25/2026'])).toBe('both')
})

test('the instant that a text names', () => {
  expect(['2026-11-03', ' 2026-11-03 06:00 ', '06:00', 'x'].map(instantOfText)).toEqual([1793664000, 1793685600, null, null])
})
