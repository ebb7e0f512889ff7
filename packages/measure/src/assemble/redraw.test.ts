import { distributionMean, stream, Tally } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { mixStudy } from '../mix/mixStudy.ts'
import { stopStudy } from '../stops/stopStudy.ts'
import { timeStudy } from '../times/timeStudy.ts'
import { redrawMix, redrawStops, redrawTimes } from './redraw.ts'

const DRAWS = 1000
const observed = (values: readonly number[]) =>
  values.map((observedSeconds, index) => ({
    task: 'wire',
    variant: null,
    operator: null,
    observedSeconds,
    rating: null,
    when: null,
    line: index + 2,
    place: '',
  }))
const uniform = stream('redraw', 0, 'times')
const values = Array.from({ length: 12 }, () => 40 + 20 * uniform())

test('the mean of redrawn times varies as Student’s t says: s²/n · (n − 1)/(n − 3)', () => {
  const studies = timeStudy(observed(values))
  const levels = Array.from({ length: DRAWS }, (_, draw) => redrawTimes(studies, '1', draw).levels[0]!)
  const { mean, variance } = Tally.of(levels)
  const n = values.length
  const exact = (studies[0]!.cv! ** 2 / n) * ((n - 1) / (n - 3))
  // 4 standard errors: false alarm 6e-5 each; kurtosis of t with 11 degrees of freedom 3.9
  expect(Math.abs(mean!)).toBeLessThan(4 * Math.sqrt(exact / DRAWS) + exact)
  expect(Math.abs(variance! / exact - 1)).toBeLessThan(4 * Math.sqrt(2.9 / DRAWS) + 0.05)
})

test('a rate by the gamma of its count, each stop with draws of its own', () => {
  const stops = Array.from({ length: 8 }, (_, index) => ({
    place: 'S3',
    cause: 'tool',
    start: index * 6000 + 3000,
    end: index * 6000 + 3600 + 60 * index,
    line: index + 2,
  }))
  const study = stopStudy(stops, { from: 0, to: 48_000 })
  const rates = Array.from({ length: DRAWS }, (_, draw) => 1 / distributionMean(redrawStops(study, '1', draw).study.times[0]!.after))
  const measured = 1 / study.times[0]!.between!
  const { mean, sd } = Tally.of(rates)
  // gamma of shape 8: mean as measured, cv 1/√8
  expect(Math.abs(mean! / measured - 1)).toBeLessThan(4 / Math.sqrt(8 * DRAWS))
  expect(Math.abs(sd! / measured - 1 / Math.sqrt(8))).toBeLessThan(0.05)
  expect(redrawStops(study, '1', 0).inputs.map(({ what, n }) => [what, n])).toEqual([
    ['time between stops', 8],
    ['repair', 8],
  ])
})

test('shares add up to one, and stay near those ordered', () => {
  const order = (product: string, units: number, options: string[] = []) => ({ product, units, options, when: null, timed: false, line: 2 })
  const study = mixStudy([order('small', 60), order('small', 20, ['kit']), order('large', 20)])
  const drawn = Array.from({ length: 200 }, (_, draw) => redrawMix(study, '1', draw).study)
  for (const { products } of drawn) expect(products.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12)
  const { mean } = Tally.of(drawn.map(({ options }) => options[0]!.byProduct[0]!))
  // 20 of 80 small ones have the kit
  expect(Math.abs(mean! - 0.25)).toBeLessThan(0.02)
})

test('of three products each but the one ordered most is an input of its own; of two, or of many, the mix is one', () => {
  const inputsOf = (...units: number[]) =>
    redrawMix(
      mixStudy(
        units.map((ordered, index) => ({ product: `p${index + 1}`, units: ordered, options: [], when: null, timed: false, line: 2 })),
      ),
      '1',
      0,
    )
  const three = inputsOf(30, 50, 20)
  expect(three.inputs.map(({ name, n }) => [name, n])).toEqual([
    ['mix, p1', 100],
    ['mix, p3', 100],
  ])
  expect(three.levels).toEqual(
    [0, 2].map((index) => expect.closeTo(Math.log(three.study.products[index]!.share / [0.3, 0.5, 0.2][index]!), 12)),
  )
  expect(inputsOf(30, 50).inputs.map(({ name }) => name)).toEqual(['mix'])
  expect(inputsOf(9, 1, 1, 1, 1, 1, 1, 1, 1).inputs.map(({ name }) => name)).toEqual(['mix'])
})

test('the same seed and draw give the same; a constant is not doubted', () => {
  const studies = timeStudy(observed([50, 50, 50]))
  expect(redrawTimes(studies, '1', 3)).toEqual(redrawTimes(studies, '1', 3))
  expect(redrawTimes(studies, '1', 3).levels).toEqual([0])
  const few = timeStudy(observed([50, 52]))
  expect(Math.abs(redrawTimes(few, '1', 1).levels[0]!)).toBeLessThanOrEqual(-Math.log(0.9))
})
