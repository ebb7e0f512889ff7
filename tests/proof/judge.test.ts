import { expect, test } from 'vitest'
import { exactChecks } from '../oracle/exact/exactCheck.ts'
import { knownOf } from '../oracle/exact/measure.ts'
import { groupsOf, judge, SIZES } from './judge.ts'

const check = (id: string) => exactChecks().find((one) => one.id === id)!
const all = exactChecks(`${import.meta.dirname}/exact`)

test('a random loop is run until an error of the size asked for would be seen, and holds', () => {
  const [verdict] = judge([check('hom.Z6.N2')], 0.02)
  expect(verdict).toMatchObject({ holds: true, value: knownOf(check('hom.Z6.N2')) })
  expect(verdict!.sees).toBeLessThanOrEqual(0.02)
  expect(verdict!.replications).toBeGreaterThan(60)
})

test('a value that is 3 % off does not hold', () => {
  const wrong = check('hom.Z6.N2')
  expect(judge([{ ...wrong, value: wrong.value * 1.03 }], 0.03)[0]!.holds).toBe(false)
})

test('constant times are counted', () => {
  const constant = exactChecks().find(({ tolerance }) => tolerance.kind === 'deterministic')!
  expect(judge([constant])).toMatchObject([{ holds: true, standardError: 0 }])
  expect(judge([{ ...constant, value: constant.value * 2 }])[0]!.holds).toBe(false)
})

test('a variance is judged by blocks of a run: that of independent gaps does not hold for a ring', () => {
  const spread = check('var-2B-b-1-1-N-2')
  expect(judge([spread], 0.4)[0]!.holds).toBe(true)
  expect(judge([{ ...spread, value: spread.outputPerSecond! }], 0.4)[0]!.holds).toBe(false)
})

test('checks of one line are judged by the same runs, and each check once', () => {
  const groups = groupsOf(all)
  expect(groups.flat()).toHaveLength(all.length)
  expect(groups.find(([first]) => first!.id === 'M-M-1-l-0.8-mu-1.rho')!.map(({ quantity }) => quantity)).toHaveLength(4)
})

test('what is seen of a wait is at most what work that takes 1 % longer adds to it', () => {
  // Pollaczek and Khinchine for random and for constant work (L. Kleinrock, Queueing Systems vol. 1, from memory): Wq = c ρ s/(1 − ρ), c = 1 and 1/2
  for (const [c, rho] of [
    [1, 0.5],
    [0.5, 0.5],
    [0.5, 0.8],
  ] as const) {
    const wait = (slower: number) => (c * rho * slower ** 2) / (1 - rho * slower)
    expect(wait(1.01) / wait(1) - 1).toBeGreaterThan(SIZES.queue)
  }
})
