/** A search for the warm-up that found one, for the tests of its words. */
import type { SteadyResult } from '@loopwright/study'

const interval = (mean: number) =>
  ({
    n: 10,
    mean,
    sd: 1,
    level: 0.95,
    halfWidth: 0.5,
    low: mean - 0.5,
    high: mean + 0.5,
    status: 'ok',
    skewness: 0,
    method: 'Hall',
  }) as const

export const FOUND: SteadyResult = {
  kind: 'steady state',
  engineVersion: '0',
  seed: '1',
  replications: 10,
  status: 'ok',
  intervalSeconds: 360,
  intervals: 200,
  runSeconds: 72_000,
  gridlocks: 0,
  outOfProducts: 0,
  cutSeconds: 5658,
  enoughSeconds: 62_238,
  outputPerHour: interval(42),
  productsInLine: interval(9),
  output: null,
  products: null,
  // the first 16 of the intervals of 360 s are warm-up
  series: {
    unitsPerHour: Array.from({ length: 200 }, (_, at) => (at < 16 ? (42 * at) / 16 : 42 + ((at * 7) % 5) - 2)),
    products: Array.from({ length: 200 }, (_, at) => Math.min(9, (9 * at) / 10)),
  },
  why: null,
}

export const NONE: SteadyResult = {
  ...FOUND,
  status: 'not converged',
  cutSeconds: null,
  enoughSeconds: null,
  outputPerHour: null,
  productsInLine: null,
  why: 'Warm-up not found: run at least twice as long.',
}
