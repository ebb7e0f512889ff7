import { distributionKinds } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { cutsOf, distributionSchema, taskTimeSchema } from './distribution.ts'

const FULL = [
  { kind: 'constant', value: '4 s' },
  { kind: 'uniform', min: '1 s', max: '4 s', shift: '2 s' },
  { kind: 'triangular', min: '1 s', mode: '2 s', max: '4 s' },
  { kind: 'pert', min: '1 s', mode: '2 s', max: '4 s' },
  { kind: 'exponential', mean: '4 s', max: '9 s' },
  { kind: 'lognormal', mu: 1, sigma: 0.2, unit: 's' },
  { kind: 'gamma', shape: 3, scale: '2 s' },
  { kind: 'weibull', shape: 3, mean: '2 s' },
  { kind: 'empirical', file: 'a.csv', column: 'b' },
  { kind: 'discrete', values: [1, '2 s'], weights: [1, 2], unit: 's' },
  { kind: 'replay', values: ['1 s'] },
  { kind: 'occasional', base: '1 s', probability: '5 %', of: '2 s' },
  { kind: 'limited', of: '2 s', min: '1 s' },
]

test('each kind has its full form, and no other has', () => {
  expect(FULL.map(({ kind }) => kind)).toEqual(distributionKinds().map(({ kind }) => kind))
  for (const one of FULL) expect(distributionSchema.safeParse(one).success, one.kind).toBe(true)
  expect(distributionSchema.safeParse({ kind: 'normal', mean: '4 s' }).success).toBe(false)
})

test('a kind with ends of its own cannot be cut, a list in turn not even be moved', () => {
  const cuts = Object.fromEntries(distributionKinds().map((form) => [form.kind, cutsOf(form)]))
  expect(cuts).toMatchObject({ uniform: 'shift', constant: 'shift', lognormal: 'all', discrete: 'all', replay: 'none', limited: 'none' })
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
