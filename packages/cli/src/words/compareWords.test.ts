import { pairedDifference } from '@loopwright/stats'
import type { CompareResult } from '@loopwright/study'
import { expect, test } from 'vitest'
import { compareSure, compareWarnings, differenceLine, pairSentence } from './compareWords.ts'

const of = (first: number[], second: number[]) => ({ difference: pairedDifference(first, second) })

test('a difference in words: real, not shown, none at all, always the same', () => {
  expect(pairSentence('B', 'A', of([105, 107, 106, 108], [100, 101, 100, 103]), 'shift')).toBe(
    'B makes 5.5 more per shift than A in the same worlds (95\u202f%: 4.6 to 6.4). The difference is real: chance alone hardly ever gives it.',
  )
  expect(pairSentence('B', 'A', of([100, 104], [101, 100]), 'shift')).toMatch(
    /^No difference shown between B and A: at most .* That is not to say/,
  )
  expect(pairSentence('B', 'A', of([1, 2], [1, 2]), 'shift')).toBe('B makes exactly what A makes, in every replication.')
  expect(pairSentence('B', 'A', of([1, 2], [3, 4]), 'shift')).toBe('B always makes 2.0 less per shift than A.')
})

const line = (name: string, units: number[], gridlocks = 0) => ({
  name,
  carriers: 3,
  plan: null,
  units,
  mean: null,
  meetsPlan: null,
  gridlocks,
})
const result = (a: number[], b: number[], gridlocks = 0): CompareResult => ({
  kind: 'comparison',
  engineVersion: '0',
  seed: '1',
  replications: a.length,
  partial: false,
  level: 0.95,
  window: { warmupSeconds: 0, endSeconds: 60 },
  lines: [line('A', a), line('B', b, gridlocks)],
  pairs: [{ first: 1, second: 0, difference: pairedDifference(b, a) }],
})

test('what pairing brought is said; streams that do not line up are warned of', () => {
  expect(compareSure(result([1, 2, 3], [2, 3, 4.1])).join(' ')).toContain('times the replications')
  expect(compareWarnings(result([1, 2, 3], [3, 2, 1])).join(' ')).toContain('their random worlds do not line up')
  expect(compareWarnings(result([1, 2, 3], [2, 3, 4.1], 1)).join(' ')).toContain('B stood still in 1 of 3 replications')
  expect(compareWarnings(result([1, 2, 3], [2, 3, 4.1])).join(' ')).toContain('Only 3 replications')
})

test('a changed input is one line', () => {
  expect(differenceLine({ path: 'stations.S5.zone', places: [], before: 'Z15', after: 'Z14' })).toBe('stations.S5.zone: Z15 → Z14')
  expect(differenceLine({ path: 'zones.*.release', places: ['Z1', 'Z2'], before: 'single', after: null })).toBe(
    'zones.*.release (Z1, Z2): single → none',
  )
  expect(differenceLine({ path: 'zones.*.turn', places: ['a', 'b', 'c', 'd', 'e'], before: 'x', after: 'y' })).toContain(
    '(5 places, a … e)',
  )
})
