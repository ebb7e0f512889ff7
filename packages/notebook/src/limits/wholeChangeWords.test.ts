import { expect, test } from 'vitest'
import { wholeChangeName, wholeChangeSentence, wholeChangeTable } from './wholeChangeWords.ts'

const difference = (mean: number, status: 'difference shown' | 'no difference shown' | 'identical in every replication') =>
  ({ n: 20, mean, sd: 2, level: 0.95, halfWidth: 2, low: mean - 2, high: mean + 2, pairingGain: null, status }) as const
const ann = { kind: 'operator', name: 'Ann', step: 1, count: 1, operator: 0 } as const
const carrier = { kind: 'carrier', name: 'carriers', step: -1, count: 9, operator: null } as const

test('people by name, carriers and crews by number', () => {
  expect(wholeChangeName(ann)).toBe('a second operator like Ann')
  expect(wholeChangeName({ ...ann, count: 2 })).toBe('one operator more like Ann')
  expect(wholeChangeName({ ...ann, step: -1, count: 2 })).toBe('one operator fewer than 2 like Ann')
  expect(wholeChangeName({ ...ann, step: -1 })).toBe('doing without operator Ann')
  expect(wholeChangeName(carrier)).toBe('one carrier fewer than 9')
  expect(wholeChangeName({ ...carrier, kind: 'repair crew', step: 1, count: 1 })).toBe('one repair crew more than 1')
})

test('what it brings, costs, or is not shown to do', () => {
  expect(wholeChangeSentence({ ...ann, difference: difference(111, 'difference shown') }, 'a shift')).toBe(
    'a second operator like Ann brings 111.0 ± 2.0 units a shift',
  )
  expect(wholeChangeSentence({ ...carrier, difference: difference(-5, 'difference shown') }, 'a shift')).toBe(
    'one carrier fewer than 9 costs 5.0 ± 2.0 units a shift',
  )
  expect(wholeChangeSentence({ ...carrier, difference: difference(0.5, 'no difference shown') }, 'a shift')).toContain(
    'no difference shown (−1.5 to 2.5 units a shift)',
  )
  expect(wholeChangeSentence({ ...carrier, difference: difference(0, 'identical in every replication') }, 'a shift')).toBe(
    'one carrier fewer than 9 changes nothing',
  )
})

test('the table keeps the order of the study; none without a change', () => {
  const table = wholeChangeTable([{ ...ann, difference: difference(111, 'difference shown') }], { one: 'shift', many: 'shifts' })
  expect(table!.rows[0]!.cells).toEqual(['A second operator like Ann', '111.0 ± 2.0'])
  expect(wholeChangeTable([], { one: 'shift', many: 'shifts' })).toBeNull()
})
