import { expect, test } from 'vitest'
import { AssertionError, assert } from './assert.ts'

test('a true condition passes, a false one throws with its text', () => {
  assert(1 < 2, 'never seen')
  expect(() => assert(2 < 1, 'two is not below one')).toThrow(AssertionError)
  expect(() => assert(2 < 1, 'two is not below one')).toThrow('two is not below one')
})
