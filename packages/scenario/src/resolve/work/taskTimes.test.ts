import type { Distribution } from '@loopwright/stats'
import { describe, expect, test } from 'vitest'
import { scenarioText } from '../../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../../read.ts'
import { longer } from './taskTimes.ts'

const PRODUCTS: [string, string] = [
  '',
  'products: { variants: { a: 50 %, b: 50 % }, options: { kit: { share: 20 %, adds: { fit: 5 s } } } }',
]

function read(time: string, ...changes: [string, string][]) {
  const { scenario, problems } = readScenario(scenarioText(['40 s ± 10 %', time], PRODUCTS, ...changes))
  return scenario?.line.stations[1]?.work?.[0]?.seconds ?? problems.map((problem) => problem.code)
}

describe('times by variant, with an option that adds 5 s', () => {
  test('one time for all', () => {
    expect(read('40 s')).toEqual([40, 45, 40, 45].map((value) => ({ kind: 'constant', value })))
  })
  test('means with one spread: the whole time is drawn from one lognormal', () => {
    expect(read('{ cv: 12 %, mean: { b: 60 s, a: 40 s } }')).toEqual(
      [40, 45, 60, 65].map((mean) => ({ kind: 'lognormal', mean, cv: 0.12 })),
    )
    expect(read('{ cv: 12 %, mean: 40 s }')).toEqual([40, 45, 40, 45].map((mean) => ({ kind: 'lognormal', mean, cv: 0.12 })))
    expect(read('{ cv: 0 %, mean: 40 s }')[1]).toEqual({ kind: 'constant', value: 45 })
  })
  test('the spread may be a default for all tasks', () => {
    expect(read('{ mean: 40 s }', ['', 'defaults: { task: { cv: 12 % } }'])[0]).toEqual({ kind: 'lognormal', mean: 40, cv: 0.12 })
    expect(read('{ mean: 40 s, cv: 5 % }', ['', 'defaults: { task: { cv: 12 % } }'])[0]).toEqual({ kind: 'lognormal', mean: 40, cv: 0.05 })
  })
  test('a variant without the task; an option alone makes it, with the spread of the task', () => {
    expect(read('{ cv: 10 %, mean: { a: none, b: 60 s } }').slice(0, 2)).toEqual([null, { kind: 'lognormal', mean: 5, cv: 0.1 }])
    expect(read('{ byVariant: { a: none, b: 60..70 s } }')).toEqual([
      null,
      { kind: 'constant', value: 5 },
      { kind: 'uniform', min: 60, max: 70 },
      { kind: 'uniform', min: 65, max: 75 },
    ])
  })
  test.each([
    ['{ cv: 10 %, mean: { a: 40 s } }', 'E_TIME_MISSING'],
    ['{ cv: 10 %, mean: { a: 40 s, b: 50 s, c: 60 s } }', 'E_UNKNOWN_VARIANT'],
    ['{ byVariant: { a: 40 s, b: nothing } }', 'E_PHRASE'],
    ['{ mean: { a: 40 s, b: 50 s } }', 'E_CV_MISSING'],
    ['{ cv: 10 %, mean: 0 s }', 'E_ZERO'],
    ['{ cv: 10 % }', 'E_MISSING'],
  ])('%s is refused', (time, code) => {
    expect(read(time)).toEqual([code])
  })
})

test('a constant on top moves every kind by as much: its mean and nothing of its shape, but at lognormal and gamma', () => {
  const uniform: Distribution = { kind: 'uniform', min: 1, max: 2 }
  const cases: [Distribution, Distribution][] = [
    [
      { kind: 'constant', value: 3 },
      { kind: 'constant', value: 13 },
    ],
    [uniform, { kind: 'uniform', min: 11, max: 12 }],
    [
      { kind: 'triangular', min: 1, mode: 2, max: 4 },
      { kind: 'triangular', min: 11, mode: 12, max: 14 },
    ],
    [
      { kind: 'pert', min: 1, mode: 2, max: 4 },
      { kind: 'pert', min: 11, mode: 12, max: 14 },
    ],
    [
      { kind: 'gamma', mean: 3, cv: 0.2 },
      { kind: 'gamma', mean: 13, cv: 0.2 },
    ],
    [
      { kind: 'exponential', mean: 3 },
      { kind: 'limited', of: { kind: 'exponential', mean: 3 }, shift: 10, min: null, max: null },
    ],
    [
      { kind: 'weibull', shape: 2, scale: 3 },
      { kind: 'limited', of: { kind: 'weibull', shape: 2, scale: 3 }, shift: 10, min: null, max: null },
    ],
    [
      { kind: 'empirical', values: [1, 2], interpolate: false },
      { kind: 'empirical', values: [11, 12], interpolate: false },
    ],
    [
      { kind: 'discrete', values: [1, 2], weights: [1, 1] },
      { kind: 'discrete', values: [11, 12], weights: [1, 1] },
    ],
    [
      { kind: 'replay', values: [1, 2] },
      { kind: 'replay', values: [11, 12] },
    ],
    [
      { kind: 'occasional', base: 1, probability: 0.1, of: uniform },
      { kind: 'occasional', base: 11, probability: 0.1, of: uniform },
    ],
    [
      { kind: 'limited', of: uniform, shift: 1, min: 2.5, max: null },
      { kind: 'limited', of: uniform, shift: 11, min: 12.5, max: null },
    ],
  ]
  for (const [time, expected] of cases) expect(longer(time, 10, 0)).toEqual(expected)
})
