import { expect, test } from 'vitest'
import { needLevel, needSample, sorted } from './samples.ts'

test('a sample that will do, and a level', () => {
  needSample('a mean', [1, 2], 'value', 2)
  needLevel(0.95)
  expect(sorted([10, 9, 1])).toEqual([1, 9, 10])
})

test('those that will not', () => {
  expect(() => needSample('a mean', [1], 'value', 2)).toThrow('Cannot give a mean from 1 value: give at least 2.')
  expect(() => needSample('a mean', [1, Infinity], 'value', 2)).toThrow('The list for a mean holds Infinity in row 2')
  for (const level of [0, 1, Number.NaN, 95]) expect(() => needLevel(level)).toThrow(`The level is ${level}`)
})
