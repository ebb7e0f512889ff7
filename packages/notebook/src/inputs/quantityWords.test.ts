import { expect, test } from 'vitest'
import { metresText, secondsText, shareText, shortNumber, spanText, speedText } from './quantityWords.ts'

test('numbers keep their digits and lose idle zeros', () => {
  expect([0, 2, 0.15, 4628.6, 75.375, 120, 1e-7].map((value) => shortNumber(value))).toEqual([
    '0',
    '2',
    '0.15',
    '4\u202f629',
    '75.38',
    '120',
    '0.0000001',
  ])
})

test('units are those of the shop floor', () => {
  expect([0.15, 42, 240, 36_000].map(secondsText)).toEqual(['0.15 s', '42 s', '4 min', '10 h'])
  expect([0.078125, 1.5, 0].map(metresText)).toEqual(['78.13 mm', '1.5 m', '0 m'])
  expect(speedText(0.25)).toBe('15 m/min')
  expect(shareText(0.6583)).toBe('65.8 %')
})

test('what all parts share is said once, else the span', () => {
  expect(spanText([2, 2, 2], secondsText, 'none')).toBe('2 s')
  expect(spanText([2, 3, 2.5], secondsText, 'none')).toBe('2 s to 3 s')
  expect(spanText([0.1, 0.1 + 1e-17], shareText, 'none')).toBe('10 %')
  expect(spanText([null, null], secondsText, 'none')).toBe('none')
  expect(spanText([2, null], secondsText, 'none')).toBe('2 s, where given')
})
