import type { Distribution } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { distribution } from './distribution.ts'

test('a phrase where there is one, with the digits that read back', () => {
  const cases: [Distribution, string][] = [
    [{ kind: 'constant', value: 6.625 }, '6.625 s'],
    [{ kind: 'exponential', mean: 0.1 + 0.2 }, 'exponential 0.30000000000000004 s'],
    [{ kind: 'lognormal', mean: 240, cv: 0.6583 }, '240 s ± 65.83 %'],
    [{ kind: 'gamma', mean: 240, cv: 1 / 3 }, 'gamma 240 s ± 33.33333333333333 %'],
    [{ kind: 'uniform', min: 30, max: 60 }, '30..60 s'],
    [{ kind: 'triangular', min: 25, mode: 40, max: 80 }, '25..40..80 s'],
    [{ kind: 'pert', min: 25, mode: 40, max: 1e-7 + 80 }, 'pert 25..40..80.0000001 s'],
  ]
  for (const [d, text] of cases) expect(distribution(d).toJSON()).toBe(text)
})

test('the full form where there is no phrase', () => {
  expect(distribution({ kind: 'weibull', shape: 2, scale: 30 }).toJSON()).toEqual({ kind: 'weibull', shape: 2, scale: '30 s' })
  expect(distribution({ kind: 'limited', of: { kind: 'replay', values: [1, 2] }, shift: 0, min: null, max: 9 }).toJSON()).toEqual({
    kind: 'limited',
    of: { kind: 'replay', unit: 's', values: [1, 2] },
    shift: '0 s',
    max: '9 s',
  })
})
