import { expect, test } from 'vitest'
import { isOthersShare, OthersShare } from './othersShare.ts'

test('is known by its name, also to another copy of this code', () => {
  expect(isOthersShare(new OthersShare())).toBe(true)
  expect(isOthersShare(Object.assign(new Error('of share 2'), { name: 'OthersShare' }))).toBe(true)
  for (const other of [new Error('OthersShare'), new RangeError('of share 2'), 'OthersShare', null])
    expect(isOthersShare(other)).toBe(false)
})
