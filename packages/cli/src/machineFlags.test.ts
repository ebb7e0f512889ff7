import { expect, test } from 'vitest'
import { isShared } from './machineFlags.ts'

test('a study is shared where a share or a queue is named', () => {
  expect([isShared({}), isShared({ workers: 3, store: 'a', fresh: true })]).toEqual([false, false])
  expect([isShared({ part: { part: 1, of: 1 } }), isShared({ queue: 'redis://plant' })]).toEqual([true, true])
})
