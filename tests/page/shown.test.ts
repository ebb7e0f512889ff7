import { expect, test } from 'vitest'
import { numberIn, shownNumber } from './shown.ts'

test('a shown number is read with its thin spaces and without its unit', () => {
  expect(numberIn('1\u202f234.5')).toBe(1234.5)
  expect(numberIn('83\u202f%')).toBe(83)
})

test('a text shows a value within half of its last digit', () => {
  expect(shownNumber(332.4)('332')).toBe(true)
  expect(shownNumber(332.6)('332')).toBe(false)
  expect(shownNumber(0.04)('< 0.1')).toBe(true)
  expect(shownNumber(0)('< 0.1')).toBe(false)
  expect(shownNumber(99.7)('> 99')).toBe(true)
  expect(shownNumber(1)(undefined)).toBe(false)
})
