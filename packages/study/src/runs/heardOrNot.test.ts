import { setImmediate } from 'node:timers/promises'
import { expect, test } from 'vitest'
import { heardOrNot } from './heardOrNot.ts'

test('a rejection that nobody hears ends nothing, and who waits hears it', async () => {
  const unheard: unknown[] = []
  const listen = (reason: unknown): number => unheard.push(reason)
  process.on('unhandledRejection', listen)
  const promise = heardOrNot(Promise.reject<number>(new Error('ended')))
  await setImmediate()
  await setImmediate()
  process.off('unhandledRejection', listen)
  expect(unheard).toEqual([])
  await expect(promise).rejects.toThrow('ended')
  await expect(heardOrNot(Promise.resolve(3))).resolves.toBe(3)
})
