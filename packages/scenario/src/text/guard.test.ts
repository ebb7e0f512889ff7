import { expect, test } from 'vitest'
import { DEPTH_MAX, measure } from './guard.ts'

test('depth counts brackets and dashes before a value, not signs inside it', () => {
  expect(measure('a: [[{b: 1}]]').depth).toBe(3)
  expect(measure('- - - x').depth).toBe(3)
  expect(measure('? ? x').depth).toBe(2)
  expect(measure(`{${'a: 1, '.repeat(500)}}`).depth).toBe(1)
  expect(measure('a: x - y - z - w').depth).toBe(0)
  expect(measure('[]'.repeat(1000)).depth).toBe(1)
})

test('deep texts of every kind are over the limit', () => {
  for (const text of [
    '['.repeat(10_000),
    '{a: '.repeat(10_000),
    '- '.repeat(10_000),
    '? '.repeat(10_000),
    `${'- '.repeat(40)}${'['.repeat(40)}`,
  ]) {
    expect(measure(text).depth).toBeGreaterThan(DEPTH_MAX)
  }
})

test('parts are signs that begin or end something', () => {
  expect(measure('plain words').parts).toBe(0)
  expect(measure('[1, 2, 3]').parts).toBe(4)
})
