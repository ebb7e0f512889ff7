import { expect, test } from 'vitest'
import { stream } from '../random/stream.ts'
import { normalQuantile } from '../special/normalQuantile.ts'
import { tQuantile } from '../special/tQuantile.ts'
import { factorialEffects } from './factorialEffects.ts'
import { pairedDifference } from './pairedDifference.ts'

/**
 * The pilot plant of Box, Hunter & Hunter, Statistics for Experimenters (1978), chapter 10; from memory: two runs for each setting of temperature,
 * concentration and catalyst, temperature fastest. Effects there: T 23, C −5, K 1.5; TK 10 by half the difference of two gains, so 20 here; TC 1.5, CK 0.
 */
const YIELDS = [
  [59, 61],
  [74, 70],
  [50, 58],
  [69, 67],
  [50, 54],
  [81, 85],
  [46, 44],
  [79, 81],
]

test('effects of a published factorial', () => {
  // our last factor is the fastest: catalyst, concentration, temperature
  const { main, interactions } = factorialEffects([2, 2, 2], YIELDS)
  const effect = (factor: number) => {
    const { means } = main[factor]!
    return means[1]!.mean - means[0]!.mean
  }
  expect([effect(2), effect(1), effect(0)]).toEqual([23, -5, 1.5])
  const between = (first: number, second: number) => interactions.find((each) => each.first === first && each.second === second)!
  expect(between(0, 2).difference.mean).toBe(20)
  expect(between(1, 2).difference.mean).toBe(3)
  expect(between(0, 1).difference.mean).toBe(0)
  expect(main[1]).toMatchObject({ least: 1, most: 0, span: { mean: 5 } })
})

test('each interval at a level that holds for all pairs of levels, of which the largest was chosen', () => {
  const outputs = [
    [10, 12, 11],
    [13, 14, 15],
    [20, 22, 26],
    [11, 10, 10],
    [9, 8, 7],
    [19, 17, 20],
  ]
  const { main, interactions, level } = factorialEffects([2, 3], outputs, 0.9)
  expect(level).toBe(0.9)
  // 1 pair of the first factor, 3 of the second
  const each = 1 - 0.1 / 4
  const average = (points: number[]) => [0, 1, 2].map((j) => points.reduce((sum, point) => sum + outputs[point]![j]!, 0) / points.length)
  expect(main[1]!.span).toEqual(pairedDifference(average([2, 5]), average([0, 3]), each))
  expect(main[1]!.span!.halfWidth).toBeCloseTo((tQuantile((1 + each) / 2, 2) * main[1]!.span!.sd) / Math.sqrt(3), 12)
  // the largest of 1 × 3 pairs of pairs: from the first level to the second at the first and the second level of the other factor
  const gains = [0, 1, 2].map((at) => [0, 1, 2].map((j) => outputs[3 + at]![j]! - outputs[at]![j]!))
  expect(interactions).toEqual([
    {
      first: 0,
      second: 1,
      from: 0,
      to: 1,
      here: 0,
      there: 1,
      gainHere: -2 / 3,
      gainThere: -6,
      difference: pairedDifference(gains[1]!, gains[0]!, 1 - 0.1 / 3),
    },
  ])
})

test('factors that add up have no interaction, to the last bit; one level has no effect', () => {
  const worlds = [0.1, 0.7, 3]
  const additive = [0, 10].flatMap((a) => [0, 3, 7].map((b) => worlds.map((world) => Math.round(world * 10) + a + b)))
  const { interactions, main } = factorialEffects([1, 2, 3], additive)
  expect(interactions.map(({ difference }) => difference.status)).toEqual(['identical in every replication'])
  expect(main[0]!.span).toBeNull()
  expect(main[1]!.span).toMatchObject({ status: 'always differs by the same', mean: 10, halfWidth: 0 })
  expect(main[2]).toMatchObject({ least: 0, most: 2 })
})

test('where nothing has an effect, a chosen pair of levels is called different in at most 5 of 100 studies', () => {
  // 600 studies of 3 × 4 points in 10 worlds; 4 standard errors above 5 %: a right method fails about one seed in 30,000. Pairs at 95 % each come to 25 %.
  const next = stream('7', 0, 'factorial')
  let [wrongMain, wrongInteraction] = [0, 0]
  const studies = 600
  for (let study = 0; study < studies; study++) {
    const outputs = Array.from({ length: 12 }, () => Array.from({ length: 10 }, () => normalQuantile(next())))
    const { main, interactions } = factorialEffects([3, 4], outputs)
    if (main.some(({ span }) => span!.status === 'difference shown')) wrongMain++
    if (interactions.some(({ difference }) => difference.status === 'difference shown')) wrongInteraction++
  }
  const limit = 0.05 + 4 * Math.sqrt((0.05 * 0.95) / studies)
  expect(wrongMain / studies).toBeLessThanOrEqual(limit)
  expect(wrongInteraction / studies).toBeLessThanOrEqual(limit)
  expect(wrongMain + wrongInteraction).toBeGreaterThan(0)
})

test('refused', () => {
  expect(() => factorialEffects([], [])).toThrow('Cannot give effects from 0 factors')
  expect(() => factorialEffects([2, 2], [[1, 2]])).toThrow(expect.objectContaining({ code: 'E_UNEQUAL_LENGTH' }))
  expect(() => factorialEffects([2], [[1], [2]])).toThrow(expect.objectContaining({ code: 'E_TOO_FEW' }))
  expect(() => factorialEffects([0], [])).toThrow(expect.objectContaining({ code: 'E_DOMAIN' }))
  expect(() =>
    factorialEffects(
      [2],
      [
        [1, 2],
        [1, 2, 3],
      ],
    ),
  ).toThrow('Point 1 has 2 values and point 2 has 3')
})
