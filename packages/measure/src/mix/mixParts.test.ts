import { expect, test } from 'vitest'
import { mixParts, mixPartsText } from './mixParts.ts'
import { mixStudy } from './mixStudy.ts'

const base = { when: null, timed: false, line: 2 }
const study = mixStudy([
  { product: 'small', options: [], units: 6, ...base },
  { product: 'small', options: ['coldKit'], units: 2, ...base },
  { product: 'large', options: ['coldKit'], units: 2, ...base },
])

test('weights of products, shares of options that the scenario has', () => {
  expect(mixParts(study, 'o.csv', ['coldKit']).map(({ path, value }) => [path, value])).toEqual([
    ['products.variants', '{ "small": 8, "large": 2 }'],
    ['products.options."coldKit".share', '{ "small": 25 %, "large": 100 % }'],
  ])
})

test('options that the scenario has not become products of their own', () => {
  expect(mixParts(study, 'o.csv', []).map(({ value }) => value)).toEqual(['{ "small": 6, "small + coldKit": 2, "large + coldKit": 2 }'])
})

test('as text, with the heaviest stretches as variations', () => {
  const dated = mixStudy([
    { product: 'small', options: [], units: 2, when: 0, timed: false, line: 2 },
    { product: 'large', options: [], units: 1, when: 86_400, timed: false, line: 3 },
  ])
  expect(mixPartsText(dated, 'o.csv', ['Orders'])).toBe(
    '# Orders\nproducts:\n  variants: { "small": 2, "large": 1 } # ordered, o.csv: 3 units\nvariations:\n  heaviest day: { products.variants: ["small", "large"], products.mix: { kind: list, sequence: ["small", "small"] } }\n',
  )
})
