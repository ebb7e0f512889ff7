import { expect, test } from 'vitest'
import { productsOf } from './products.ts'
import { createReport } from './report.ts'
import type { ProductsSketch } from './sketch.ts'

const of = (products?: ProductsSketch) => {
  const { variants, mix } = productsOf(createReport(), products)
  return [variants.list, mix]
}

test('one product, by weights, levelled, or in a sequence', () => {
  expect(of()).toEqual([['product'], { kind: 'random', shares: [1] }])
  expect(of({ variants: { a: 0.4, b: 0.6 } })).toEqual([['a', 'b'], { kind: 'random', shares: [0.4, 0.6] }])
  expect(of({ variants: { a: 4, b: 6 }, mix: 'levelled' })).toEqual([['a', 'b'], { kind: 'levelled', shares: [4, 6] }])
  expect(of({ variants: ['a', 'b'], mix: { kind: 'pattern', sequence: ['b', 'a', 0] } })).toEqual([
    ['a', 'b'],
    { kind: 'pattern', sequence: [1, 0, 0] },
  ])
})
