import type { Distribution } from '@loopwright/stats'
import { describe, expect, test } from 'vitest'
import { scenarioText } from '../../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../../read.ts'

/** The distribution that a text in the place of a task's time becomes, or the codes of what is wrong. */
function read(time: string): Distribution | string[] {
  const { scenario, problems } = readScenario(scenarioText(['40 s ± 10 %', time]))
  return scenario?.line.stations[1]?.work?.[0]?.seconds[0] ?? problems.map((problem) => problem.code)
}

describe('full forms', () => {
  test.each<[string, Distribution]>([
    ['{ kind: constant, value: 45 s }', { kind: 'constant', value: 45 }],
    ['{ kind: uniform, min: 30 s, max: 1 min }', { kind: 'uniform', min: 30, max: 60 }],
    ['{ kind: triangular, min: 25 s, mode: 40 s, max: 80 s }', { kind: 'triangular', min: 25, mode: 40, max: 80 }],
    ['{ kind: pert, min: 25 s, mode: 40 s, max: 80 s }', { kind: 'pert', min: 25, mode: 40, max: 80 }],
    ['{ kind: exponential, mean: 4 min }', { kind: 'exponential', mean: 240 }],
    ['{ kind: lognormal, mean: 45 s, cv: 15 % }', { kind: 'lognormal', mean: 45, cv: 0.15 }],
    ['{ kind: lognormal, mean: 45 s, cv: 0.15 }', { kind: 'lognormal', mean: 45, cv: 0.15 }],
    ['{ kind: gamma, mean: 45 s, cv: 0.2 }', { kind: 'gamma', mean: 45, cv: 0.2 }],
    ['{ kind: gamma, shape: 25, scale: 2 s }', { kind: 'gamma', mean: 50, cv: 0.2 }],
    ['{ kind: weibull, shape: 2, scale: 30 s }', { kind: 'weibull', shape: 2, scale: 30 }],
    ['{ kind: weibull, shape: 1, mean: 30 s }', { kind: 'weibull', shape: 1, scale: 30 }],
    ['{ kind: empirical, unit: s, values: [38.2, 41] }', { kind: 'empirical', values: [38.2, 41], interpolate: false }],
    ['{ kind: empirical, values: [38 s, 0.5 min], interpolate: true }', { kind: 'empirical', values: [38, 30], interpolate: true }],
    ['{ kind: discrete, unit: min, values: [0.5, 1], weights: [3, 1] }', { kind: 'discrete', values: [30, 60], weights: [3, 1] }],
    ['{ kind: replay, unit: s, values: [38, 41, 39] }', { kind: 'replay', values: [38, 41, 39] }],
    [
      '{ kind: occasional, base: 38 s, probability: 2 %, of: 20..40 s }',
      { kind: 'occasional', base: 38, probability: 0.02, of: { kind: 'uniform', min: 20, max: 40 } },
    ],
    [
      '{ kind: gamma, mean: 45 s, cv: 0.2, min: 20 s }',
      { kind: 'limited', of: { kind: 'gamma', mean: 45, cv: 0.2 }, shift: 0, min: 20, max: null },
    ],
    [
      '{ kind: exponential, mean: 45 s, shift: 10 s }',
      { kind: 'limited', of: { kind: 'exponential', mean: 45 }, shift: 10, min: null, max: null },
    ],
    [
      '{ kind: limited, of: 30..60 s, max: 50 s }',
      { kind: 'limited', of: { kind: 'uniform', min: 30, max: 60 }, shift: 0, min: null, max: 50 },
    ],
  ])('%s', (text, expected) => {
    expect(read(text)).toEqual(expected)
  })

  test('lognormal by mu and sigma of the logarithm: mean exp(μ + σ²/2), cv² = exp(σ²) − 1', () => {
    // Johnson, Kotz & Balakrishnan, Continuous Univariate Distributions 1, ch. 14: first two moments (from memory).
    const read1 = read('{ kind: lognormal, mu: 0, sigma: 0.6, unit: min }') as { mean: number; cv: number }
    expect(read1.mean / 60).toBeCloseTo(Math.exp(0.18), 12)
    expect(read1.cv).toBeCloseTo(0.6583, 4)
  })

  test('Weibull by mean and shape: mean = scale · Γ(1 + 1/shape)', () => {
    // Γ(3/2) = √π / 2, NIST Digital Library of Mathematical Functions 5.4.6.
    const { scale } = read('{ kind: weibull, shape: 2, mean: 30 s }') as { scale: number }
    expect(scale).toBeCloseTo(30 / (Math.sqrt(Math.PI) / 2), 10)
  })

  test.each([
    ['{ kind: normal, mean: 40 s, sd: 6 s }', 'E_CHOICE'],
    ['{ kind: gamma, mean: 40 s }', 'E_PARAMETERS'],
    ['{ kind: weibull, shape: 0, scale: 3 s }', 'E_ZERO'],
    ['{ kind: weibull, shape: -1, scale: 3 s }', 'E_NEGATIVE'],
    ['{ kind: gamma, mean: 40 s, cv: 1e999 }', 'E_NOT_FINITE'],
    ['{ kind: gamma, mean: 40 s, cv: 1e9 % }', 'E_BEYOND_REACH'],
    ['{ kind: empirical, unit: s, values: [.nan] }', 'E_NOT_FINITE'],
    ['{ kind: empirical, unit: s, values: [-3] }', 'E_NEGATIVE'],
    ['{ kind: occasional, base: 38 s, probability: 1.5, of: 20 s }', 'E_SHARE_BEYOND'],
    ['{ kind: occasional, base: 38 s, probability: 15, of: nonsense }', 'E_PHRASE'],
  ])('%s is refused', (text, code) => {
    expect(read(text)).toContain(code)
  })
})
