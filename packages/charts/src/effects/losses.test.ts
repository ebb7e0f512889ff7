import { marksOf, textsOf } from '../../../../tests/helpers/marksOf.ts'
import { expect, test } from 'vitest'
import { lossesExample, stepExample } from '../examples/losses.ts'
import { losses } from './losses.ts'

const example = lossesExample()
const total = { n: 9, mean: 100, sd: 0, level: 0.95, halfWidth: 0, low: 100, high: 100, skewness: 0, method: 'Hall', status: 'ok' } as const
const told = (...steps: [string, number, number][]) => {
  const causes = steps.map(([name, mean, halfWidth]) => {
    const step = stepExample(mean, halfWidth)
    return { kind: 'stop', name, step, alone: step } as const
  })
  return losses({ forecast: total, ideal: { ...total, mean: 120 }, gap: stepExample(20, 1), causes })
}

const NAMES = [
  'Ideal: none of these',
  'shortage of carriers',
  'differences between products',
  'spread of task times',
  'exchange at S6',
  'breaks',
  'tightness tester',
  'jam at a transfer',
  'Forecast: as it stands',
]
const namesOf = (figure: typeof example): string[] => textsOf(figure).filter((_, index) => index % 2 === 0)
const bar = (name: string) => marksOf(example, 'area')[NAMES.indexOf(name)]!

test('each bar begins where the one above it ends, from the ideal to the forecast', () => {
  const bars = marksOf(example, 'area')
  expect(namesOf(example)).toEqual(NAMES)
  expect(bars[0]!.x).toEqual(['from', 439.2])
  const steps = bars.slice(1, -1)
  expect(steps.map(({ x }) => x[0])).toEqual(bars.slice(0, -2).map(({ x }) => x[1]))
  expect(Number(steps.at(-1)!.x[1])).toBeCloseTo(Number(bars.at(-1)!.x[1]), 9)
  expect(bars.map(({ ink }) => ink === 'barPale')).toEqual(NAMES.map((_, index) => index === 0 || index === NAMES.length - 1))
})

test('the steps can be seen: the axis begins a little below the lowest, and says so', () => {
  const { across } = example.drawing
  expect(across.cut).toBe(true)
  expect(across.from).toBe(250)
  expect(example.readLine).toContain('where the axis begins at 250')
  // a dashed line leads from each bar to the next one
  expect(marksOf(example, 'rule').filter(({ dash }) => dash !== undefined)).toHaveLength(NAMES.length - 1)
})

test('a loss goes down and says so, with its interval about its end; a cause that helps goes up', () => {
  const breaks = bar('breaks')
  expect(textsOf(example)).toContain('−40.4 ± 0.6')
  const [low, high] = marksOf(example, 'rule')
    .filter(({ ink }) => ink === 'whisker')
    [NAMES.indexOf('breaks')]!.x.map(Number)
  expect([low! - Number(breaks.x[1]), high! - Number(breaks.x[1])].map((each) => each.toFixed(6))).toEqual(['-0.600000', '0.600000'])
  const products = bar('differences between products')
  expect(products.ink).toBe('move')
  expect(textsOf(example)).toContain('+1.2 ± 0.5')
  expect(Number(products.x[1])).toBeGreaterThan(Number(products.x[0]))
})

test('the finding names the largest losses', () => {
  expect(example.finding).toBe(
    'The largest loss is by breaks: 40.4 units a shift; next by exchange at S6 (28.9) and tightness tester (17.3).',
  )
  expect(told(['A', 12, 1]).finding).toBe('The largest loss is by A: 12.0 units a window.')
})

test('losses whose intervals overlap are not ranked; what is not shown is not named', () => {
  expect(told(['A', 9, 2], ['B', 12, 2], ['C', 1, 3]).finding).toMatch(
    /^The largest losses cannot be told apart: B \(12\.0\), A \(9\.0\) units a window\./,
  )
  expect(told(['C', 1, 3], ['D', 0, 0]).finding).toBe('No cause is shown to cost units.')
})

test('the table has the numbers of the picture, the totals marked', () => {
  const { rows } = example.table
  expect(rows.flatMap(({ cells }) => cells.slice(0, 2))).toEqual(textsOf(example))
  expect(rows.map(({ marked }) => marked)).toEqual(NAMES.map((_, index) => index === 0 || index === NAMES.length - 1))
  expect(rows.find(({ cells }) => cells[0] === 'breaks')!.cells[2]).toBe('361')
})

test('where nothing is lost the bars lie within the axis', () => {
  const same = { ...total, mean: 24, low: 24, high: 24 }
  const { across } = losses({ forecast: same, ideal: same, gap: stepExample(0, 0), causes: [] }).drawing
  expect(across).toMatchObject({ from: 15, to: 24, cut: true })
})

test('without two replications there is nothing to draw', () => {
  expect(losses({ forecast: null, ideal: null, gap: null, causes: [] }).drawing.marks).toEqual([])
})
