import { expect, test } from 'vitest'
import { withUnits } from './withUnits.ts'

test('a figure and its unit stay on one line, other words may part', () => {
  expect(withUnits('61.8 s of work, 2 s until it is let go, 8 h 20 min before')).toBe(
    '61.8\u00a0s of work, 2\u00a0s until it is let go, 8\u00a0h 20\u00a0min before',
  )
  expect(withUnits('at 12 m/min over 950 mm; S6 stands')).toBe('at 12\u00a0m/min over 950\u00a0mm; S6 stands')
  expect(withUnits('11 shifts of 12 stations make 320 units')).toBe('11 shifts of 12 stations make 320 units')
})
