import { expect, test } from 'vitest'
import { barText } from './barText.ts'

// The Unicode Standard, block elements: U+2588 full block, U+2589 … U+258F left seven eighths … left one eighth
test('to an eighth of a character', () => {
  expect(barText(8, 8, 4)).toBe('\u2588'.repeat(4))
  expect(barText(4, 8, 4)).toBe('\u2588\u2588')
  for (let eighths = 1; eighths < 8; eighths += 1) expect(barText(eighths, 8, 1)).toBe(String.fromCodePoint(0x2590 - eighths))
})

test('a little shows, nothing does not, what is not known does not', () => {
  expect(barText(0.0001, 8, 4)).toBe('▏')
  expect(barText(0, 8, 4)).toBe('')
  expect(barText(null, 8, 4)).toBe('')
  expect(barText(0, 0, 4)).toBe('')
})

test('below zero with its sign', () => expect(barText(-4, 8, 4)).toBe('−██'))
