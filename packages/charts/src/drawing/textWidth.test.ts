import { expect, test } from 'vitest'
import { shortened, textWidth } from './textWidth.ts'

// tests/golden/charts compares with what a renderer measures
test('wide letters take more than narrow ones, bold ones more than plain', () => {
  expect(textWidth('mmm', 10)).toBeGreaterThan(textWidth('iii', 10))
  expect(textWidth('mmm', 10, true)).toBeGreaterThan(textWidth('mmm', 10))
  expect(textWidth('', 10)).toBe(0)
  expect(textWidth('試験', 10)).toBe(20)
})

test('a text is cut where it must be, and fits then', () => {
  expect(shortened('Load', 100, 10)).toBe('Load')
  const cut = shortened('Fan deck and casing', 60, 10)
  expect(cut).toMatch(/^Fan.*…$/)
  expect(textWidth(cut, 10)).toBeLessThanOrEqual(60)
  expect(shortened('abc', 1, 10)).toBe('a…')
})
