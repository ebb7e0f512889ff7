import { expect, test } from 'vitest'
import { type GrowingList, makeRoom } from './growingList.ts'

test('a list takes as many numbers as come, and keeps them in order', () => {
  const list: GrowingList = { values: new Float64Array(0), length: 0 }
  for (let k = 0; k < 1000; k++) {
    makeRoom(list)
    list.values[list.length++] = k / 2
  }
  expect(Array.from(list.values.subarray(0, list.length))).toEqual(Array.from({ length: 1000 }, (_, k) => k / 2))
})
