import { expect, test } from 'vitest'
import { smallestEnough } from './smallestEnough.ts'

test('every border is found, from any start, with few looks', () => {
  for (let border = 0; border <= 70; border++) {
    let looks = 0
    const found = smallestEnough(
      (n) => {
        looks++
        return n >= border
      },
      3,
      60,
    )
    expect(found).toBe(border > 60 ? null : Math.max(3, border))
    expect(looks).toBeLessThan(15)
  }
})
