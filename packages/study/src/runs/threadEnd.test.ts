import { expect, test } from 'vitest'
import { ThreadEnd, threadEnd } from './threadEnd.ts'

test('whatever a thread throws outside of a task ends it; want of memory goes by its name, with a remedy', () => {
  const full = threadEnd(Object.assign(new Error('heap'), { code: 'ERR_WORKER_OUT_OF_MEMORY' }))
  expect([full.name, full instanceof ThreadEnd]).toEqual(['OutOfMemory', true])
  expect(full.message).toContain('--workers')
  const thrown = new TypeError('it is no function')
  expect(threadEnd(thrown)).toMatchObject({ name: 'ThreadEnd', message: 'it is no function', cause: thrown })
  expect(threadEnd('gone')).toMatchObject({ name: 'ThreadEnd', message: 'gone' })
})
