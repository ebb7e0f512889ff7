import { tQuantile } from '@loopwright/stats'
import {
  betaQuantile,
  betaTails,
  binomialCdf,
  chiSquareQuantile,
  digamma,
  fQuantile,
  gammaP,
  gammaQ,
  gammaQuantile,
  lnGamma,
  normalCdf,
  normalQuantile,
  trigamma,
} from '@loopwright/stats/special'
import { expect, test } from 'vitest'
import { type Case, expectRelative, readCases } from './vectors.ts'

// biome-ignore lint/suspicious/noExplicitAny: each kind of case has its own input
const VALUE_OF: Record<string, (input: any) => number> = {
  lnGamma: ({ x }) => lnGamma(x),
  digamma: ({ x }) => digamma(x),
  trigamma: ({ x }) => trigamma(x),
  gammaP: ({ a, x }) => gammaP(a, x),
  gammaQ: ({ a, x }) => gammaQ(a, x),
  betaI: ({ a, b, x }) => betaTails(a, b, x).lower,
  'betaI upper': ({ a, b, x }) => betaTails(a, b, x).upper,
  'normal cdf': ({ z }) => normalCdf(z),
  'normal quantile': ({ p }) => normalQuantile(p),
  't quantile': ({ p, df }) => tQuantile(p, df),
  'chi-square quantile': ({ p, df }) => chiSquareQuantile(p, df),
  'F quantile': ({ p, df1, df2 }) => fQuantile(p, df1, df2),
  'gamma quantile': ({ p, shape }) => gammaQuantile(p, shape),
  'beta quantile': ({ p, a, b }) => betaQuantile(p, a, b).x,
  'binomial cdf': ({ k, n, p }) => binomialCdf(k, n, p),
}

test.each(readCases('special'))('$id $kind $input', (one: Case) => {
  const value = VALUE_OF[one.kind]
  if (value === undefined) throw new Error(`no function for the kind "${one.kind}"`)
  const got = value(one.input)
  if (one.kind === 'lnGamma')
    expect(Math.abs(got - one.expect.value)).toBeLessThanOrEqual(one.tolerance! * Math.max(1, Math.abs(one.expect.value)))
  else expectRelative(got, one.expect.value, one.tolerance!)
})
