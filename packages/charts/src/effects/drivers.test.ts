import { expect, test } from 'vitest'
import { drivers } from './drivers.ts'
import { driversExample } from '../examples/drivers.ts'

test('bars in the order of the study, those that limit are marked', () => {
  const { rows, finding, table } = driversExample()
  expect(rows.map(({ driver, limits }) => [driver, limits])).toEqual([
    ['S6 Tightness test', true],
    ['moves (speed and ramps)', false],
    ['S2 Refrigerant parts', false],
    ['share of coldKit', false],
  ])
  expect(finding).toBe('S6 Tightness test counts most, with 0.52 % more output for 1 % less; next is moves (speed and ramps), with 0.21 %.')
  expect(table.rows[0]!.marked).toBe(true)
})

test('limits that cannot be told apart are all named', () => {
  const elasticity = { n: 9, mean: 0.4, sd: 0.3, level: 0.95, halfWidth: 0.2, low: 0.2, high: 0.6, status: 'ok' } as const
  const effect = (name: string) => ({ kind: 'task', name, station: 0, lessIsBetter: true, elasticity, unitsOfStep: 6 }) as const
  const { finding } = drivers({ drivers: [effect('A'), effect('B')], limits: [0, 1], step: 0.05 })
  expect(finding).toBe('A, B count most, and cannot be told apart: 1 % less of A gives 0.40 % more output.')
})
