import { expect, test } from 'vitest'
import { standardTime } from './allowance.ts'

// a worked example of work-study texts, from memory: 0.80 min observed at 110 %, allowance 15 % of the work: 1.012 min; of the shift: 1.035 min
test('on the work, and on the shift', () => {
  expect(standardTime(0.8, 1.1, { share: 0.15, of: 'work', breaks: 'calendar' })).toBeCloseTo(1.012, 12)
  expect(standardTime(0.8, 1.1, { share: 0.15, of: 'shift', breaks: 'calendar' })).toBeCloseTo(1.0353, 4)
  expect(standardTime(50, 1, null)).toBe(50)
})
