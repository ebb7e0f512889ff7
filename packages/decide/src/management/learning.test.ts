import { describe, expect, test } from 'vitest'
import { between, deJong, learningFactor, rampUp, wright } from './learning.ts'

test('an 80 % curve: 100, 80, 64, 51.2 at units 1, 2, 4, 8 (worked in every textbook of cost estimating; from memory)', () => {
  expect([1, 2, 4, 8].map((n) => wright(100, n, 0.8))).toEqual([100, 80, expect.closeTo(64, 9), expect.closeTo(51.2, 9)])
})

test('unit factors as tables of operations management print them (three digits, from memory): unit 10 and unit 100', () => {
  const of = (rate: number) => [10, 100].map((n) => wright(1, n, rate).toFixed(3))
  expect([0.8, 0.85, 0.9].map(of)).toEqual([
    ['0.477', '0.227'],
    ['0.583', '0.340'],
    ['0.705', '0.497'],
  ])
})

test('De Jong is Wright where all can be learned, and constant where nothing can', () => {
  expect(deJong(100, 8, 0.8, 0)).toBeCloseTo(51.2, 9)
  expect(deJong(100, 8, 0.8, 1)).toBe(100)
  expect(deJong(100, 8, 0.8, 0.25)).toBeCloseTo(25 + 0.75 * 51.2, 9)
})

const learning = { rate: 0.85, incompressible: 0.3, standardAfter: 800 }

test('the standard holds from its unit on; the first takes about 1.3 to 1.6 or more times it (common practice, no source)', () => {
  expect([learningFactor(learning, 800), learningFactor(learning, 5000)]).toEqual([1, 1])
  expect(learningFactor(learning, 1)).toBeCloseTo(1 / (0.3 + 0.7 * 800 ** Math.log2(0.85)), 12)
})

describe('ramp-up', () => {
  const perWeek = (factor: number): number => 3300 / factor
  test('weeks make more and more, up to the standard', () => {
    const weeks = rampUp({ ...learning, standardAfter: 8000 }, perWeek, 5)
    expect(weeks.every(({ units }, index) => index === 0 || units >= weeks[index - 1]!.units)).toBe(true)
    expect(weeks.at(-1)!.factor).toBe(1)
    expect(weeks[1]!.before).toBeCloseTo(weeks[0]!.units, 9)
  })
  test('the factor of a week is the mean over its own units: by summing them', () => {
    const [first] = rampUp({ ...learning, standardAfter: 8000 }, perWeek, 1)
    const units = Math.round(first!.units)
    const sum = Array.from({ length: units }, (_, n) => learningFactor({ ...learning, standardAfter: 8000 }, n + 1)).reduce(
      (a, b) => a + b,
      0,
    )
    expect(Math.abs(first!.factor / (sum / units) - 1)).toBeLessThan(0.01)
  })
})

test('between points in a straight line, beyond them on', () => {
  const points = [
    [1, 330],
    [1.2, 280],
    [1.6, 220],
  ] as const
  expect([1, 1.1, 1.4, 1.8].map((x) => between(points, x))).toEqual([
    330,
    expect.closeTo(305, 9),
    expect.closeTo(250, 9),
    expect.closeTo(190, 9),
  ])
})
