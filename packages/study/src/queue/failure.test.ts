import { expect, test } from 'vitest'
import { failureText, thrownFailure } from './failure.ts'

test('what a run threw is thrown again where it was asked for', () => {
  const back = thrownFailure(failureText(new RangeError('too many carriers')))
  expect(back).toBeInstanceOf(RangeError)
  expect(back?.message).toBe('too many carriers')
  expect(thrownFailure(failureText(Object.assign(new Error('x'), { name: 'AssertionError' })))?.name).toBe('AssertionError')
})

test.each(['', 'job stalled more than allowable limit', '{}', '[1]', 'null', '{"name":1,"message":"x"}'])(
  'other reasons are none: %s',
  (reason) => expect(thrownFailure(reason)).toBeNull(),
)
