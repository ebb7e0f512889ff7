import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { TimerQueue } from './queue.ts'

function put(queue: TimerQueue, slot: number, time: number): void {
  queue.times[slot] = time
  queue.schedule(slot)
}

describe('a timer queue', () => {
  test('gives the earliest first, and of equal times the lowest slot', () => {
    const queue = new TimerQueue(4)
    put(queue, 3, 2)
    put(queue, 0, 1)
    put(queue, 2, 1)
    put(queue, 1, 2)
    expect([queue.pop(), queue.pop(), queue.pop(), queue.pop(), queue.pop()]).toEqual([0, 2, 1, 3, -1])
  })

  test('backwards gives of equal times the highest slot', () => {
    const queue = new TimerQueue(3, true)
    put(queue, 0, 5)
    put(queue, 1, 5)
    put(queue, 2, 4)
    expect([queue.pop(), queue.pop(), queue.pop()]).toEqual([2, 1, 0])
  })

  test('refuses a slot twice, and a cancel of one that is not pending', () => {
    const queue = new TimerQueue(1)
    put(queue, 0, 1)
    expect(() => queue.schedule(0)).toThrow('already pending')
    queue.cancel(0)
    expect(() => queue.cancel(0)).toThrow('not pending')
  })

  // Reference: a list kept sorted by (time, slot).
  test('agrees with a sorted list under schedule, cancel and pop', () => {
    const step = fc.record({ what: fc.constantFrom('schedule', 'cancel', 'pop'), slot: fc.nat(19), time: fc.nat(6) })
    fc.assert(
      fc.property(fc.array(step, { maxLength: 300 }), fc.boolean(), (steps, backwards) => {
        const queue = new TimerQueue(20, backwards)
        const list: { slot: number; time: number }[] = []
        for (const { what, slot, time } of steps) {
          const at = list.findIndex((entry) => entry.slot === slot)
          expect(queue.isPending(slot)).toBe(at >= 0)
          if (what === 'schedule' && at < 0) {
            put(queue, slot, time)
            list.push({ slot, time })
            list.sort((a, b) => a.time - b.time || (backwards ? b.slot - a.slot : a.slot - b.slot))
          } else if (what === 'cancel' && at >= 0) {
            queue.cancel(slot)
            list.splice(at, 1)
          } else if (what === 'pop') {
            expect(queue.first()).toBe(list[0]?.slot ?? -1)
            expect(queue.pop()).toBe(list.shift()?.slot ?? -1)
          }
          expect(queue.size).toBe(list.length)
        }
      }),
      { seed: 1, numRuns: 300 },
    )
  })
})
