import fc from 'fast-check'
import { expect, test } from 'vitest'
import { makeWorkList } from './lists.ts'
import { addInOrder, takeLowest } from './lowestFirst.ts'

// Reference: a sorted set. A step of NONE takes out, any other goes in.
test('the lowest comes out first, each once however often it went in, whatever is taken out in between', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: -1, max: 30 }), { maxLength: 200 }), (steps) => {
      const list = makeWorkList(31)
      const known = new Set<number>()
      const takeBoth = (): void => {
        const lowest = Math.min(...known)
        expect(takeLowest(list)).toBe(lowest)
        known.delete(lowest)
      }
      for (const step of steps) {
        if (step >= 0) {
          addInOrder(list, step)
          known.add(step)
        } else if (known.size > 0) takeBoth()
        expect(list.length).toBe(known.size)
        expect(Array.from(list.isIn, (is, index) => is === Number(known.has(index)))).not.toContain(false)
      }
      while (known.size > 0) takeBoth()
      expect(list.length).toBe(0)
    }),
    { seed: 1, numRuns: 300 },
  )
})
