import { expect, test } from 'vitest'
import { oneView, shownView } from './cell.ts'

test('a single content is shown and nothing switches it', () => {
  expect(shownView(oneView('a'))).toBe('a')
  expect(oneView('a').choice).toBeNull()
})

test('of several views the one named is shown, else the first', () => {
  const of = [
    { key: '5', content: 'five' },
    { key: '6', content: 'six' },
  ]
  expect(shownView({ choice: 'carriers', shown: '6', of })).toBe('six')
  expect(shownView({ choice: 'carriers', shown: '7', of })).toBe('five')
  expect(() => shownView({ choice: null, shown: '', of: [] })).toThrow(RangeError)
})
