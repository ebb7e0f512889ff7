import { describe, expect, test } from 'vitest'
import { baseLineSweep } from '../examples/baseLine.ts'
import { throughputFinding } from './throughputFinding.ts'

const sweep = baseLineSweep()
const answer = sweep.answer!
const some = (...carriers: number[]) => sweep.counts.filter((count) => carriers.includes(count.carriers))

describe('throughputFinding', () => {
  test('where more gain nothing, and where they harm', () => {
    // means 330.2 at 10, 332.5 at 12 (the best), 330.6 at 14, 327.9 at 15: the border of 1 % is 329.2
    expect(throughputFinding(sweep, 'shift')).toBe('Beyond 10 carriers output gains less than 1 %; beyond 14 it falls by more than 1 %.')
  })
  test('no count tried beyond the plateau', () => {
    expect(throughputFinding({ counts: some(9, 10, 11, 12), answer: { ...answer, bestAtUpperEnd: true } }, 'shift')).toBe(
      'Beyond 10 carriers output gains less than 1 %. The best count is the largest tried.',
    )
  })
  test('the chosen is the best', () => {
    expect(throughputFinding({ counts: some(5, 6, 7), answer: { ...answer, best: 7, chosen: 7, bestAtUpperEnd: true } }, 'shift')).toBe(
      '7 carriers make the most, and no more were tried.',
    )
    expect(throughputFinding({ counts: some(12, 16, 17), answer: { ...answer, chosen: 12 } }, 'shift')).toBe(
      '12 carriers make the most; beyond 12 output falls by more than 1 %.',
    )
  })
  test('nothing confirmed, too few replications, one count', () => {
    expect(throughputFinding({ counts: sweep.counts, answer: { ...answer, chosen: null } }, 'shift')).toContain('No count is shown yet')
    expect(throughputFinding({ counts: sweep.counts, answer: null }, 'shift')).toBe(
      'There are too few shifts simulated to compare the counts.',
    )
    expect(throughputFinding({ counts: some(9), answer: { ...answer, best: 9, chosen: 9 } }, 'shift')).toBe(
      '9 carriers make 327 units per shift.',
    )
  })
  test('gridlock is shouted', () => {
    const counts = sweep.counts.map((count) => (count.carriers === 17 ? { ...count, gridlocks: 3 } : count))
    expect(throughputFinding({ counts, answer }, 'shift')).toMatch(/ With 17 carriers some runs came to a standstill \(gridlock\)\.$/)
  })
})
