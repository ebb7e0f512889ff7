import { expect, test } from 'vitest'
import { checkField, checkRows, decimalsOf, ownText } from './rows.ts'

test('names of all rows, in the order in which they come', () =>
  expect(checkRows('a table', [{ a: 1 }, { b: null, a: 2 }])).toEqual(['a', 'b']))

test('what is no row is told with its number', () =>
  expect(() => checkRows('a table', [{ a: 1 }, [2]])).toThrow('row 2 of a table is a list, not an object'))

test('a name that no row has', () => {
  checkField('a chart', 'x', 'a', ['a'])
  expect(() => checkField('a chart', 'x', 3, ['a'])).toThrow('x of a chart is 3, which no row has')
})

test.each([
  [[1, 2], 0],
  [[1.5, 2.25], 2],
  [[1 / 3], 3],
  [['a', null], 0],
])('%j has %i decimals', (values, decimals) => expect(decimalsOf(values)).toBe(decimals))

test.each([
  [1234.5, '1\u202f234.50'],
  [-2, '−2.00'],
  [Number.NaN, '–'],
  [null, ''],
  [true, 'yes'],
  ['as it is', 'as it is'],
])('%j is read as %j', (value, text) => expect(ownText(value, 2)).toBe(text))
