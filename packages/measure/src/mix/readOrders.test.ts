import { expect, test } from 'vitest'
import { readTable } from '../table/bytes.ts'
import { readOrders } from './readOrders.ts'

const read = (text: string) => readOrders(readTable(new TextEncoder().encode(text), 'o.csv'))

test('orders with quantities, days, options in columns of yes and no or in one list', () => {
  const { orders, options } = read('Date;Model;Qty;coldKit;Options\n2026-11-03;small;3;x;quietKit\n2026-11-04;large;1;;-\n')
  expect(orders.map(({ product, units, options: own }) => [product, units, own])).toEqual([
    ['small', 3, ['coldKit', 'quietKit']],
    ['large', 1, []],
  ])
  expect(options).toEqual(['coldKit', 'quietKit'])
})

test('without quantities each row is a unit', () =>
  expect(read('product\nsmall\nsmall\n').orders.map(({ units }) => units)).toEqual([1, 1]))

test('what is no order is refused with its place and reason', () => {
  const { account } = read(
    'model,qty,date\nsmall,1,2026-11-03\nsmall,1.5,2026-11-03\nsmall,0,2026-11-03\nsmall,two,2026-11-03\n,1,2026-11-03\nsmall,1,soon\n=x,1,2026-11-03\na/b,1,2026-11-03\nTotal,4,\n',
  )
  expect(account.refusals.map(({ place, reason }) => `${place}: ${reason}`)).toEqual([
    'line 3, column 2 ("qty"): "1.5" is no number of units',
    'line 4, column 2 ("qty"): it orders none',
    'line 5, column 2 ("qty"): "two" is no number of units',
    'line 6, column 1 ("model"): it names no product',
    'line 7, column 3 ("date"): "soon" is no day or time',
    'line 8, column 1 ("model"): "=x" is a formula, and nothing is computed',
    'line 9, column 1 ("model"): "a/b" has a "/" in it, which no name of a scenario may have',
    'line 10: "Total": a row of sums or means is no measurement',
  ])
})

test('names that look alike are told, not pooled', () => {
  const { doubts, orders } = read('model\nSmall\nsmall \nlarge\n')
  expect(doubts).toEqual(['"Small" and "small" are counted as different products: are they one?'])
  expect(orders).toHaveLength(3)
})
