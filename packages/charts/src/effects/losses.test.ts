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

test('each bar begins where the one above it ends, from the ideal to the forecast', () => {
  const [ideal, ...rest] = example.rows
  const forecast = rest.pop()!
  expect(ideal).toMatchObject({ kind: 'total', from: 0, to: 439.2, text: '439 ± 1' })
  expect(forecast).toMatchObject({ kind: 'total', from: 0, text: '332 ± 2' })
  expect(rest.map(({ from }) => from)).toEqual([ideal!, ...rest.slice(0, -1)].map(({ to }) => to))
  expect(rest.at(-1)!.to).toBeCloseTo(Number(forecast.to), 9)
  expect(rest.map(({ cause }) => cause)).toEqual([
    'shortage of carriers',
    'differences between products',
    'spread of task times',
    'exchange at S6',
    'breaks',
    'tightness tester',
    'jam at a transfer',
  ])
})

test('bars are drawn in the order of the rows, whatever their kind', () => {
  const domains = [...JSON.stringify(example.spec).matchAll(/"domain":(\["[^\]]*\])/g)].map((found) => JSON.parse(found[1]!) as string[])
  expect(domains.length).toBeGreaterThan(5)
  for (const domain of domains) expect(domain).toEqual(example.rows.map(({ cause }) => cause))
})

test('a loss goes down and says so, with its interval about its end; a cause that helps goes up', () => {
  const of = (name: string) => example.rows.find(({ cause }) => cause === name)!
  const breaks = of('breaks')
  expect(breaks).toMatchObject({ kind: 'loss', text: '−40.4 ± 0.6' })
  expect([Number(breaks.low) - Number(breaks.to), Number(breaks.high) - Number(breaks.to)].map((each) => each.toFixed(6))).toEqual([
    '-0.600000',
    '0.600000',
  ])
  const products = of('differences between products')
  expect(products).toMatchObject({ kind: 'gain', text: '+1.2 ± 0.5' })
  expect(Number(products.to)).toBeGreaterThan(Number(products.from))
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
  expect(rows.map(({ cells }) => cells.slice(0, 2))).toEqual(example.rows.map(({ cause, text }) => [cause, text]))
  expect(rows.map(({ marked }) => marked)).toEqual(example.rows.map(({ kind }) => kind === 'total'))
  expect(rows.find(({ cells }) => cells[0] === 'breaks')!.cells[2]).toBe('361')
})

test('without two replications there is nothing to draw', () => {
  expect(losses({ forecast: null, ideal: null, gap: null, causes: [] }).rows).toEqual([])
})
