import { mser5, warmupSentence } from '@loopwright/stats/procedures'
import { expect, test } from 'vitest'
import { expectRelative, readCases } from './vectors.ts'

test.each(readCases('warmup', 'mser5'))('$id cut', ({ input, expect: want }) => {
  const got = mser5(input.data)
  expect([got.batches, got.d, got.delete, got.status]).toEqual([want.batches, want.d, want.delete, want.status])
  expectRelative(got.curve[got.d!], want.mser, 1e-9)
  want.curveFirst8.forEach((value: number, d: number) => {
    expectRelative(got.curve[d], value, 1e-9)
  })
  expectRelative(got.meanAfter, want.meanAfter, 1e-9)
  expect(warmupSentence(got)).toBeNull()
})

test.each(readCases('warmup', 'mser5 refused'))('$id refused', ({ input, expect: want }) => {
  const got = mser5(input.data)
  expect([got.delete, got.status, got.meanAfter]).toEqual([null, want.status, null])
  if (want.d !== undefined) {
    expect([got.batches, got.d]).toEqual([want.batches, want.d])
    want.curveFirst8.forEach((value: number, d: number) => {
      expectRelative(got.curve[d], value, 1e-9)
    })
  }
  expect(warmupSentence(got)).toMatch(/intervals/)
})
