import { quantile, stream } from '@loopwright/stats'
import { describe, expect, test } from 'vitest'
import type { Observation } from './observation.ts'
import { everyNth, timeStudy, type TimeStudyRequest } from './timeStudy.ts'

const observed = (values: readonly number[], more: Partial<Observation> = {}): Observation[] =>
  values.map((observedSeconds, index) => ({
    task: 'wire',
    variant: null,
    operator: null,
    observedSeconds,
    rating: null,
    when: null,
    line: index + 2,
    place: `line ${index + 2}`,
    ...more,
  }))
const study = (values: readonly number[], request: TimeStudyRequest = {}, more: Partial<Observation> = {}) =>
  timeStudy(observed(values, more), { samples: 99, ...request })[0]!

const drawn = (n: number): number[] => {
  const uniform = stream('study', 0, 'wire')
  return Array.from({ length: n }, () => quantile({ kind: 'lognormal', mean: 50, cv: 0.15 }, uniform()))
}

test('numbers of a task, and a curve that holds', () => {
  const wire = study(drawn(40))
  expect(wire.n).toBe(40)
  expect(Math.abs(wire.mean - 50)).toBeLessThan(4 * (7.5 / Math.sqrt(40)))
  expect(wire.stands).toBe('curve')
  expect(wire.choice!.candidates).toHaveLength(3)
})

describe('rating and allowance', () => {
  test('of each time, else of the table; once', () => {
    expect(study([50, 60], {}, { rating: 1.1 }).values).toEqual([55.00000000000001, 66])
    expect(study([50], { rating: 0.9 }).values).toEqual([45])
    expect(study([50], { rated: false }, { rating: 1.1 }).values).toEqual([50])
  })
  test('on the work or on the shift', () => {
    expect(study([50], { allowance: { share: 0.1, of: 'work', breaks: 'calendar' } }).values[0]).toBeCloseTo(55, 12)
    expect(study([45], { allowance: { share: 0.1, of: 'shift', breaks: 'allowance' } }).values[0]).toBeCloseTo(50, 12)
  })
})

test('what lies far out is shown with its row, and the values keep it', () => {
  const values = [50, 51, 49, 52, 50, 49, 51, 50, 140]
  const wire = study(values)
  expect(wire.outliers!.observations.map(({ line }) => line)).toEqual([10])
  expect([wire.mean > 59, wire.outliers!.meanWithout]).toEqual([true, 50.25])
  expect(wire.values).toContain(140)
})

test('how many values make what', () => {
  expect(study([50, 52]).distribution).toEqual({ kind: 'lognormal', mean: 51, cv: 0.12 })
  expect(study([50, 52, 48, 51, 49]).stands).toBe('mean and spread')
  expect(study([50, 50, 50]).distribution).toEqual({ kind: 'constant', value: 50 })
  expect(study([50, 52, 48, 51, 49], { keepValues: true }).distribution).toMatchObject({ kind: 'empirical', values: [50, 52, 48, 51, 49] })
})

test('two kinds of work in one: no curve holds, and the values stand for it', () => {
  const values = Array.from({ length: 60 }, (_, index) => (index % 2 === 0 ? 30 : 60) + (index % 7) * 0.3)
  expect(study(values)).toMatchObject({ stands: 'values', distribution: { kind: 'empirical' } })
})

test('the order is that of the clock where all times have one; tasks and variants are never pooled', () => {
  const times = [
    ...observed([3, 1, 2]).map((one, index) => ({ ...one, when: [30, 10, 20][index]! })),
    ...observed([9], { variant: 'large' }),
  ]
  const [first, second] = timeStudy(times)
  expect([first!.values, second!.values]).toEqual([[1, 2, 3], [9]])
})

test('the shortest time is taken off where all values lie above it', () => {
  const values = drawn(30).map((value) => value + 20)
  expect(study(values, { shortest: { wire: 20 } }).choice!.candidates).toHaveLength(6)
  expect(study(values, { shortest: { wire: 90 } }).choice!.candidates).toHaveLength(3)
})

test('of very many times every so manyth makes the curve, and all make the mean', () => {
  const many = Array.from({ length: 150_000 }, (_, index) => 40 + (index % 20))
  const wire = study(many, { keepValues: true })
  expect(wire.mean).toBeCloseTo(49.5, 9)
  expect([wire.n, wire.least, wire.most]).toEqual([150_000, 40, 59])
  expect((wire.distribution as unknown as { values: number[] }).values.length).toBeLessThanOrEqual(2000)
  expect(everyNth([1, 2, 3], 5)).toEqual([1, 2, 3])
})
