import { expect, test } from 'vitest'
import { unitsOf } from './unitWords.ts'

test('one unit is told in the singular, whatever stands between', () => {
  expect(unitsOf('1')).toBe('1 unit')
  expect(unitsOf('1.0', 'fewer')).toBe('1.0 fewer units')
  expect(unitsOf('110 ± 5')).toBe('110 ± 5 units')
})
