import { expect, test } from 'vitest'
import { remembered } from './remembered.ts'

test('each question is answered once, and those beyond the ones kept anew', () => {
  const asked: number[] = []
  const square = remembered((value: number) => {
    asked.push(value)
    return value * value
  })
  expect([3, 3, 4, 3].map(square)).toEqual([9, 9, 16, 9])
  expect(asked).toEqual([3, 4])
  for (let value = 0; value < 30_000; value++) square(value)
  asked.length = 0
  expect([3, 29_999, 29_999].map(square)).toEqual([9, 29_999 ** 2, 29_999 ** 2])
  expect(asked).toEqual([29_999, 29_999])
})
