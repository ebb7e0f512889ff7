import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { TimerQueue } from './queue.ts'

function put(queue: TimerQueue, slot: number, time: number): void {
  queue.times[slot] = time
  queue.schedule(slot)
}

describe('a timer queue', () => {
  test('gives the earliest first, and equal times in another order backwards', () => {
    const order = (backwards: boolean): number[] => {
      const queue = new TimerQueue(4, backwards)
      put(queue, 3, 2)
      put(queue, 0, 1)
      put(queue, 2, 1)
      put(queue, 1, 3)
      return [queue.pop(), queue.pop(), queue.pop(), queue.pop(), queue.pop()]
    }
    expect(order(false)).toEqual([2, 0, 3, 1, -1])
    expect(order(true)).toEqual([0, 2, 3, 1, -1])
  })

  test('refuses a slot twice, and a cancel of one that is not pending', () => {
    const queue = new TimerQueue(1)
    put(queue, 0, 1)
    expect(() => queue.schedule(0)).toThrow('already pending')
    queue.cancel(0)
    expect(() => queue.cancel(0)).toThrow('not pending')
  })

  // Reference: a list kept sorted by time; of equal times any may come.
  test('agrees with a sorted list under schedule, cancel and pop', { tags: 'long' }, () => {
    const slots = 200
    const step = (latest: number) =>
      fc.record({ what: fc.constantFrom('schedule', 'schedule', 'cancel', 'pop'), slot: fc.nat(slots - 1), time: fc.nat(latest) })
    const steps = fc.oneof(...[2, 6, 1000, 1e6].map((latest) => fc.array(step(latest), { minLength: 100, maxLength: 600, size: 'max' })))
    fc.assert(
      fc.property(steps, fc.boolean(), (steps, backwards) => {
        const queue = new TimerQueue(slots, backwards)
        const list: { slot: number; time: number }[] = []
        for (const { what, slot, time } of steps) {
          expect(queue.size).toBe(list.length)
          const at = list.findIndex((entry) => entry.slot === slot)
          expect(queue.isPending(slot)).toBe(at >= 0)
          if (what === 'schedule' && at < 0) {
            put(queue, slot, time)
            list.push({ slot, time })
            list.sort((a, b) => a.time - b.time)
          } else if (what === 'cancel' && at >= 0) {
            queue.cancel(slot)
            list.splice(at, 1)
          } else if (what === 'pop') {
            const first = queue.first()
            expect(queue.pop()).toBe(first)
            const found = list.findIndex((entry) => entry.slot === first)
            expect(found >= 0).toBe(list.length > 0)
            if (found < 0) continue
            expect(list[found]!.time).toBe(list[0]!.time)
            list.splice(found, 1)
          }
        }
      }),
      { seed: 1, numRuns: 300 },
    )
  })
})
