import { marksOf, textsOf } from '../../../../tests/helpers/marksOf.ts'
import { expect, test } from 'vitest'
import { drivers } from './drivers.ts'
import { driversExample } from '../examples/drivers.ts'

test('bars in the order of the study, those that limit are marked', () => {
  const figure = driversExample()
  const { finding, table } = figure
  expect(textsOf(figure)).toEqual([
    'S6 Tightness test',
    '0.52 % (0.48 to 0.56)',
    'moves (speed and ramps)',
    '0.21 % (0.18 to 0.24)',
    'S2 Refrigerant parts',
    '0.10 % (0.07 to 0.13)',
    'share of coldKit',
    '−0.08 % (−0.10 to −0.06)',
  ])
  expect(marksOf(figure, 'area').map(({ x, ink }) => [x[0], ink])).toEqual([
    [0, 'bar'],
    [0, 'barPale'],
    [0, 'barPale'],
    [0, 'barPale'],
  ])
  expect(marksOf(figure, 'rule').at(-1)).toMatchObject({ x: [0, 0], ink: 'zero' })
  expect(finding).toBe(
    'Most is brought by S6 Tightness test: 0.52 % more output for 1 % less; next is moves (speed and ramps), with 0.21 %.',
  )
  expect(table.rows[0]!.marked).toBe(true)
})

test('limits that cannot be told apart are all named', () => {
  const elasticity = { n: 9, mean: 0.4, sd: 0.3, level: 0.95, halfWidth: 0.2, low: 0.2, high: 0.6, status: 'ok' } as const
  const effect = (name: string) => ({ kind: 'task', name, station: 0, lessIsBetter: true, elasticity, unitsOfStep: 6 }) as const
  const { finding } = drivers({ drivers: [effect('A'), effect('B')], limits: [0, 1], step: 0.05 })
  expect(finding).toBe('What counts most cannot be told apart yet (A and B): 1 % less of A gives 0.40 % more output.')
})

test('what cannot be told from nothing is not named', () => {
  const unsure = { n: 3, mean: 0.4, sd: 0.2, level: 0.95, halfWidth: 0.5, low: -0.1, high: 0.9, status: 'ok' } as const
  const effect = (name: string) => ({ kind: 'task', name, station: 0, lessIsBetter: true, elasticity: unsure, unitsOfStep: 6 }) as const
  const { finding, alt } = drivers({ drivers: [effect('A'), effect('B')], limits: [], step: 0.05 }, { per: 'shift' })
  expect(finding).toBe('Nothing is shown to bring more output: no interval lies above 0; more simulated shifts narrow them.')
  expect(alt).not.toMatch(/\bA\b/)
  // constant times that bring less: no run more narrows anything
  const worse = { ...unsure, mean: -0.1, sd: 0, halfWidth: 0, low: -0.1, high: -0.1, status: 'no spread' } as const
  expect(drivers({ drivers: [{ ...effect('A'), elasticity: worse }], limits: [], step: 0.05 }).finding).toBe(
    'Nothing is shown to bring more output: no interval lies above 0.',
  )
})

test('what is shown counts, though what may count more is not shown yet', () => {
  const of = (name: string, mean: number, halfWidth: number) =>
    ({
      kind: 'repair',
      name,
      station: null,
      lessIsBetter: true,
      elasticity: { n: 3, mean, sd: 0.2, level: 0.95, halfWidth, low: mean - halfWidth, high: mean + halfWidth, status: 'ok' },
      unitsOfStep: 6,
    }) as const
  const { finding } = drivers({ drivers: [of('A', 0.4, 0.5), of('jam: how long', 0.22, 0.2)], limits: [1], step: 0.05 })
  expect(finding).toBe(
    '1 % less of jam: how long is shown to give 0.22 % more output. What counts most is not shown yet; more simulated windows tell.',
  )
})
