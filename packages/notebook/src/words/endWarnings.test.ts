import { expect, test } from 'vitest'
import { endWarnings } from './endWarnings.ts'

const words = { one: 'shift', many: 'shifts', line: 'loop' } as const
const line = { stations: [] }

test('a line that goes on to the end has none', () =>
  expect(endWarnings('x', { line, gridlocks: 0, outOfProducts: 0, runs: 9 }, 'losses', words)).toEqual([]))

test('a line as it stands: standstill, and a list that ran out in some runs', () => {
  const [still, dry] = endWarnings('x', { line, gridlocks: 3, outOfProducts: 2, runs: 9 }, 'losses', words)
  expect(still!.markdown).toContain('stood still for good in 3 of 9 shifts')
  expect(dry!.markdown).toContain('- as it stands: in 2 of 9 shifts')
})
