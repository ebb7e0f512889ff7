import { expect, test } from 'vitest'
import { memoryStore } from '../store/memoryStore.ts'
import { createPool, keptPool } from './withoutMachine.ts'

test('the calling thread alone, and no store', () => {
  expect(createPool().size).toBe(1)
  expect(() => keptPool(createPool(), memoryStore())).toThrow('leave out "store"')
})
