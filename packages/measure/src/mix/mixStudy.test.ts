import { expect, test } from 'vitest'
import { levelledRound, mixStudy } from './mixStudy.ts'
import type { Order } from './readOrders.ts'

const order = (product: string, units: number, more: Partial<Order> = {}): Order => ({
  product,
  options: [],
  units,
  when: null,
  timed: false,
  line: 2,
  ...more,
})

test('shares of products, of options by product, and of products with their options', () => {
  const study = mixStudy([
    order('small', 6),
    order('small', 2, { options: ['coldKit'] }),
    order('large', 2, { options: ['coldKit', 'quietKit'] }),
  ])
  expect(study.products.map(({ name, share }) => [name, share])).toEqual([
    ['small', 0.8],
    ['large', 0.2],
  ])
  expect(study.options).toEqual([
    { option: 'coldKit', share: 0.4, byProduct: [0.25, 1] },
    { option: 'quietKit', share: 0.2, byProduct: [0, 1] },
  ])
  expect(study.variants.map(({ name, units }) => [name, units])).toEqual([
    ['small', 6],
    ['small + coldKit', 2],
    ['large + coldKit + quietKit', 2],
  ])
})

test('the levelled order, and quotas of a short round', () => {
  // 2 : 3 : 5 by hand: at each place the largest w·k − W·x, ties to the first
  expect(levelledRound([4, 6, 10], 20).join('')).toBe('2102122012')
  // 52/31/17 of 20: 11, 6, 3 by the divisor rule of Webster (a worked value of the rule)
  const round = levelledRound([52, 31, 17], 20)
  expect([0, 1, 2].map((index) => round.filter((one) => one === index).length)).toEqual([11, 6, 3])
})

test('the heaviest hour, day and week, by units or by work', () => {
  const at = (text: string) => Date.parse(`${text}:00Z`) / 1000
  const orders = [
    order('small', 5, { when: at('2026-11-02 06:10'), timed: true }),
    order('small', 3, { when: at('2026-11-03 06:10'), timed: true }),
    order('large', 3, { when: at('2026-11-03 07:10'), timed: true }),
    order('large', 4, { when: at('2026-11-09 07:10'), timed: true }),
  ]
  const [hour, day, week] = mixStudy(orders).worst
  expect([hour!.units, day!.units, week!.units]).toEqual([5, 6, 11])
  expect([new Date(week!.start * 1000).getUTCDay(), day!.sequence]).toEqual([1, ['small', 'small', 'small', 'large', 'large', 'large']])
  const heavy = mixStudy(orders, { work: { small: 50, large: 60 } }).worst
  expect(heavy.map(({ load }) => load)).toEqual([60, 60, 60])
  expect(heavy[1]!.start).toBe(at('2026-11-09 00:00'))
})

test('no days, no heaviest stretch; no order, no mix', () => {
  expect(mixStudy([order('a', 1)]).worst).toEqual([])
  expect(() => mixStudy([])).toThrow(RangeError)
})
