import { expect, test } from 'vitest'
import { exactChecks } from '../oracle/exact/exactLoop.ts'
import { judge, rateOf } from './judge.ts'

const check = (id: string) => exactChecks().find((one) => one.id === id)!

test('a random loop is run until an error of the size asked for would be seen, and holds', () => {
  const verdict = judge(check('hom.Z6.N2'), 0.02)
  expect(verdict).toMatchObject({ holds: true, value: rateOf(check('hom.Z6.N2')) })
  expect(verdict.sees).toBeLessThanOrEqual(0.02)
  expect(verdict.replications).toBeGreaterThan(60)
})

test('a value that is 3 % off does not hold', () => {
  const wrong = check('hom.Z6.N2')
  expect(judge({ ...wrong, value: wrong.value * 1.03 }, 0.03).holds).toBe(false)
})

test('constant times are counted', () => {
  const constant = exactChecks().find(({ tolerance }) => tolerance.kind === 'deterministic')!
  expect(judge(constant)).toMatchObject({ holds: true, standardError: 0 })
  expect(judge({ ...constant, value: constant.value * 2 }).holds).toBe(false)
})
