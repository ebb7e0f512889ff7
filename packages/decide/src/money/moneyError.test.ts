import { expect, test } from 'vitest'
import { MoneyError } from './moneyError.ts'

test('it is a refusal of what was asked, by its name', () => {
  const error = new MoneyError('an investment is 0 or more, not -1')
  expect(error).toBeInstanceOf(RangeError)
  expect([error.name, error.message]).toEqual(['MoneyError', 'an investment is 0 or more, not -1'])
})
