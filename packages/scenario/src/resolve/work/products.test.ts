import { describe, expect, test } from 'vitest'
import { scenarioText } from '../../../../../tests/helpers/scenarioText.ts'
import { readScenario } from '../../read.ts'

function read(products: string) {
  const { scenario, problems, notes } = readScenario(scenarioText(['', `products: ${products}`]))
  return { variants: scenario?.line.variants, mix: scenario?.line.mix, codes: problems.map((problem) => problem.code), notes }
}

describe('variants and options', () => {
  test('without products there is one variant', () => {
    const { scenario } = readScenario(scenarioText())
    expect([scenario?.line.variants, scenario?.line.mix]).toEqual([['product'], { kind: 'random', shares: [1] }])
  })
  test('options expand in written order, the last one fastest', () => {
    const { variants, mix } = read(
      '{ variants: { a: 60 %, b: 40 % }, options: { p: { share: { a: 10 %, b: 50 % } }, q: { share: 30 % } } }',
    )
    expect(variants).toEqual(['a', 'a + q', 'a + p', 'a + p + q', 'b', 'b + q', 'b + p', 'b + p + q'])
    expect(mix).toEqual({ kind: 'random', shares: [0.378, 0.162, 0.042, 0.018, 0.14, 0.06, 0.14, 0.06] })
  })
  test('notes say which variant and which options, and the share of all', () => {
    const { notes } = read('{ variants: { a: 1, b: 3 }, options: { p: { share: 20 % } } }')
    expect(notes?.variants[3]).toEqual({ name: 'b + p', variant: 'b', options: ['p'], share: 0.15 })
    expect(notes?.options).toEqual(['p'])
  })
  test('an expanded name that stands already is an error', () => {
    expect(read('{ variants: { a: 50 %, a + p: 50 % }, options: { p: { share: 20 % } } }').codes).toEqual(['E_DUPLICATE_NAME'])
  })
})

describe('mixes', () => {
  test('random by percentages or whole weights', () => {
    expect(read('{ variants: { a: 40 %, b: 60 % } }').mix).toEqual({ kind: 'random', shares: [0.4, 0.6] })
    expect(read('{ variants: { a: 2, b: 3 } }').mix).toEqual({ kind: 'random', shares: [2, 3] })
    expect(read('{ variants: { a: 0, b: 3 } }').mix).toEqual({ kind: 'random', shares: [0, 3] })
  })
  test('levelled counts in the smallest whole weights', () => {
    expect(read('{ mix: levelled, variants: { a: 37.5 %, b: 62.5 % } }').mix).toEqual({ kind: 'levelled', shares: [3, 5] })
    expect(read('{ mix: levelled, variants: { a: 4, b: 6 } }').mix).toEqual({ kind: 'levelled', shares: [2, 3] })
    expect(read('{ mix: levelled, variants: { a: 50 %, b: 50 % }, options: { p: { share: 10 % } } }').mix).toEqual({
      kind: 'levelled',
      shares: [9, 1, 9, 1],
    })
  })
  test('pattern, list and weights by name', () => {
    expect(read('{ variants: [a, b], mix: { kind: pattern, sequence: [b, a, b] } }').mix).toEqual({ kind: 'pattern', sequence: [1, 0, 1] })
    expect(read('{ variants: [a, b], mix: { kind: list, sequence: [b] } }').mix).toEqual({ kind: 'list', sequence: [1] })
    expect(read('{ variants: [a, b], mix: { kind: random, weights: { b: 0.5, a: 1.25 } } }').mix).toEqual({
      kind: 'random',
      shares: [1.25, 0.5],
    })
  })
  test.each([
    ['{ variants: { a: 50 %, b: 47 % } }', 'E_SHARES_SUM'],
    ['{ variants: { a: 50 %, b: 50.06 % } }', 'E_SHARES_SUM'],
    ['{ variants: { a: 50 %, b: 2 } }', 'E_SHARES_MIXED'],
    ['{ variants: { a: 0.5, b: 0.5 } }', 'E_SHARE_NUMBER'],
    ['{ variants: { a: -1, b: 2 } }', 'E_NEGATIVE'],
    ['{ variants: { a: 0 %, b: 100 % }, options: { p: { share: 101 % } } }', 'E_SHARE_BEYOND'],
    ['{ variants: [a, b] }', 'E_MIX'],
    ['{ variants: [a], mix: { kind: pattern, sequence: [] } }', 'E_LIST_EMPTY'],
    ['{ variants: [a], mix: { kind: random, weights: { a: 0 } } }', 'E_SHARES_ZERO'],
    ['{ variants: [a, b], mix: { kind: random, weights: { a: 1 } } }', 'E_SHARE_MISSING'],
    ['{ mix: mixed }', 'E_CHOICE'],
  ])('%s is refused', (products, code) => {
    expect(read(products).codes).toContain(code)
  })
  test('a sum within 0.05 % of 100 is rounding, and is not scaled', () => {
    expect(read('{ variants: { a: 33.33 %, b: 33.33 %, c: 33.33 % } }').mix).toEqual({ kind: 'random', shares: [0.3333, 0.3333, 0.3333] })
    expect(read('{ variants: { a: 50 %, b: 50.05 % } }').codes).toEqual([])
  })
})
