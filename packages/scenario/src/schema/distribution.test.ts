import { expect, test } from 'vitest'
import { distributionSchema, KINDS, taskTimeSchema } from './distribution.ts'

test('the kinds are those of the distributions, and no other', () => {
  expect([...KINDS].sort()).toEqual([
    'constant',
    'discrete',
    'empirical',
    'exponential',
    'gamma',
    'limited',
    'lognormal',
    'occasional',
    'pert',
    'replay',
    'triangular',
    'uniform',
    'weibull',
  ])
})

test('distributions may stand inside one another', () => {
  const inner = { kind: 'limited', of: { kind: 'occasional', base: '1 s', probability: 0.1, of: '2 s' }, max: '9 s' }
  expect(distributionSchema.safeParse(inner).success).toBe(true)
  expect(distributionSchema.safeParse({ ...inner, of: { kind: 'occasional' } }).success).toBe(false)
})

test('a task takes a distribution, means with a spread, or one by variant', () => {
  for (const time of [
    '4 s',
    { kind: 'constant', value: '4 s' },
    { mean: '4 s', cv: '5 %' },
    { mean: { a: '4 s' } },
    { byVariant: { a: '4 s' } },
  ]) {
    expect(taskTimeSchema.safeParse(time).success).toBe(true)
  }
  for (const time of [4, [], {}, { mean: 4 }, { byVariant: '4 s' }, { mean: '4 s', byVariant: {} }])
    expect(taskTimeSchema.safeParse(time).success).toBe(false)
})
