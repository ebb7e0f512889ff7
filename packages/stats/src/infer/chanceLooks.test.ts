import { expect, test } from 'vitest'
import { stream } from '../random/stream.ts'
import { binomialCdf } from '../special/binomialCdf.ts'
import { CHANCE_LOOKS, chanceLooks, nextLook } from './chanceLooks.ts'
import { chanceVerdict } from './chanceVerdict.ts'

test('the parts of the chance of error sum to 1, the looks rise', () => {
  expect(CHANCE_LOOKS.reduce((sum, { part }) => sum + part, 0)).toBeCloseTo(1, 12)
  expect(CHANCE_LOOKS.map(({ n }) => n)).toEqual([...CHANCE_LOOKS.map(({ n }) => n)].sort((a, b) => a - b))
  expect(nextLook(0)).toBe(20)
  expect(nextLook(2000)).toBeNull()
})

test('only whole looks count, at their own level', () => {
  const all = new Array<boolean>(120).fill(true)
  expect(chanceLooks(all.slice(0, 19), 0.05)).toBeNull()
  expect(chanceLooks(all, 0.05)).toMatchObject({ n: 100, successes: 100, verdict: 'met', level: 1 - 0.05 * 0.1, method: 'looks' })
  expect(() => chanceLooks(all, 0)).toThrow('The chance of error is 0')
})

/** Studies that go on until a side is shown or the looks are over: how many name the side given. */
function named(chance: number, side: 'met' | 'not met', studies: number, alpha: number): number {
  const draw = stream('looks', 0, `${chance}`)
  let wrong = 0
  for (let study = 0; study < studies; study += 1) {
    const outcomes: boolean[] = []
    for (const { n } of CHANCE_LOOKS) {
      while (outcomes.length < n) outcomes.push(draw() < chance)
      const { verdict } = chanceLooks(outcomes, alpha)!
      if (verdict === side) wrong += 1
      if (verdict !== 'open') break
    }
  }
  return wrong
}

// False alarm: each of the two fails with a chance below 1e-6 where the word is kept (alpha/2 for a side, 2,000 studies).
test('with the chance at the border, or just below, a wrong side is named in no more than alpha/2 of studies', () => {
  const alpha = 0.1
  const most = (count: number): number => 1 - binomialCdf(count - 1, 2000, alpha / 2)
  expect(most(named(0.9, 'not met', 2000, alpha))).toBeGreaterThan(1e-6)
  expect(most(named(0.8999, 'met', 2000, alpha))).toBeGreaterThan(1e-6)
})

test('the same check sees looks that each spend all of alpha', () => {
  const draw = stream('looks', 1, 'naive')
  let wrong = 0
  for (let study = 0; study < 2000; study += 1) {
    const outcomes = Array.from({ length: 2000 }, () => draw() < 0.9)
    const missed = ({ n }: { readonly n: number }): boolean =>
      chanceVerdict(outcomes.slice(0, n).filter(Boolean).length, n, { level: 0.9 }).high < 0.9
    if (CHANCE_LOOKS.some(missed)) wrong += 1
  }
  expect(1 - binomialCdf(wrong - 1, 2000, 0.05)).toBeLessThan(1e-6)
})
