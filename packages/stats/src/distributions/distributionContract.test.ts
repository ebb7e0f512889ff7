import { expect, test } from 'vitest'
import type { Distribution } from './distribution.ts'
import { distributionContract } from './distributionContract.ts'
import { quantile } from './samplerTable.ts'

const lognormal: Distribution = { kind: 'lognormal', mean: 20, cv: 0.2 }

test('a distribution two hundredths off is seen, by cdf, quadrature and draws', () => {
  const breaches = distributionContract(lognormal, { smooth: true, draw: (u) => 1.02 * quantile(lognormal, u) }).join('; ')
  expect(breaches).toContain('the table gives')
  expect(breaches).toContain('where the cdf is')
  expect(breaches).toContain('the mean is')
  expect(breaches).toContain('the mean of 100000 draws is')
  expect(breaches).toContain('draws are not above the median')
})

test('an inverse that falls, or is not finite, is seen', () => {
  expect(
    distributionContract(lognormal, { smooth: true, draw: (u) => quantile(lognormal, Math.min(1 - u, 1 - 2 ** -53)) }).join(),
  ).toContain('after')
  expect(distributionContract(lognormal, { smooth: true, draw: (u) => (u > 0.9 ? Infinity : quantile(lognormal, u)) }).join()).toContain(
    'Infinity',
  )
})

test('one with another spread is seen', () => {
  const wide: Distribution = { kind: 'lognormal', mean: 20, cv: 0.21 }
  expect(distributionContract(lognormal, { smooth: true, draw: (u) => quantile(wide, u) }).join()).toContain('the variance is')
})

test('one that cannot be used is told why', () => {
  expect(distributionContract({ kind: 'exponential', mean: 0 }, { smooth: true })).toEqual(['mean is 0; it must be above 0'])
})
