import { describe, expect, test } from 'vitest'
import { certainVerdict, chanceVerdict } from './chanceVerdict.ts'

describe('the side of nine of ten', () => {
  // All of n: the lower limit is 0.025^(1/n) (Clopper and Pearson, one side): below 0.9 at n = 35, 0.9026 at n = 36.
  test('shown by 36 of 36, not yet by 35 of 35', () => {
    expect(chanceVerdict(35, 35)).toMatchObject({ verdict: 'open', low: 0.025 ** (1 / 35), high: 1, share: 1, method: 'fixed n' })
    expect(chanceVerdict(36, 36)).toMatchObject({ verdict: 'met', low: 0.025 ** (1 / 36) })
  })

  test('missed where the upper limit lies below: none of 20 is at most 1 − 0.025^(1/20)', () => {
    const { verdict, high } = chanceVerdict(0, 20)
    expect(verdict).toBe('not met')
    expect(high).toBeCloseTo(1 - 0.025 ** (1 / 20), 12)
  })

  test('18 of 20 says nothing; 900 of 1000 is known to ± 2 points', () => {
    expect(chanceVerdict(18, 20).verdict).toBe('open')
    const { verdict, low, high } = chanceVerdict(900, 1000)
    expect(verdict).toBe('about')
    // R 4: binom.test(900, 1000)$conf.int is 0.8797 … 0.9179 (from memory)
    expect(low).toBeCloseTo(0.8797, 3)
    expect(high).toBeCloseTo(0.9179, 3)
  })

  test('met and not met never stand beside an interval that holds the border, about always does', () => {
    for (const n of [20, 100, 300, 1000, 3000]) {
      for (let successes = 0; successes <= n; successes += Math.max(1, n / 100)) {
        const { verdict, low, high } = chanceVerdict(successes, n)
        expect(verdict === 'met').toBe(low >= 0.9)
        expect(verdict === 'not met').toBe(high < 0.9)
      }
    }
  })

  test('a side that needs more confidence is shown later; what lies wholly on one side at 95 % stays open until the last look', () => {
    const strict = { shownLevel: 0.999 }
    expect(chanceVerdict(870, 1000).verdict).toBe('not met')
    expect(chanceVerdict(870, 1000, strict)).toMatchObject({ verdict: 'open', method: 'looks', level: 0.999 })
    const last = chanceVerdict(1745, 2000, { ...strict, last: true })
    expect(last).toMatchObject({ verdict: 'not met' })
    const near = chanceVerdict(1765, 2000, { ...strict, last: true })
    expect(near).toMatchObject({ verdict: 'about', level: 0.999 })
    expect(near.high).toBeGreaterThanOrEqual(0.9)
  })
})

test('a line without chance: one window tells', () => {
  expect(certainVerdict(true)).toMatchObject({ verdict: 'met', share: 1, low: 1, high: 1, n: 1, method: 'no chance' })
  expect(certainVerdict(false)).toMatchObject({ verdict: 'not met', share: 0, successes: 0 })
})

test('what is no share is refused', () => {
  expect(() => chanceVerdict(1, 2, { border: 1 })).toThrow('The border is 1')
  expect(() => chanceVerdict(1, 2, { shownLevel: 1 })).toThrow('The level is 1')
})
