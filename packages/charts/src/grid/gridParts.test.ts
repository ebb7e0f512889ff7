import { expect, test } from 'vitest'
import { gridExample } from '../examples/grid.ts'
import { axisWords, gridSides, interactionWords, levelNumbers, levelWords, meanAt, settingWords, unitsText } from './gridParts.ts'

const carriers = { name: 'carriers', levels: ['1', '12'] }
const speed = { name: 'drive.speed', levels: ['10 m/min', '12.5 m/min', '15 m/min'] }

test('the factor with more levels runs along, of equals the first; those beyond the second stay', () => {
  expect(gridSides([carriers, speed])).toEqual({ long: 1, short: 0, others: [] })
  expect(gridSides([carriers, carriers, speed])).toEqual({ long: 0, short: 1, others: [2] })
  expect(gridSides([speed])).toEqual({ long: 0, short: null, others: [] })
})

test('levels and settings in words', () => {
  expect(levelWords(carriers, 0)).toBe('1 carrier')
  expect(settingWords([carriers, speed], [1, 2])).toBe('12 carriers with drive.speed 15 m/min')
})

test('numbers with one unit stand on a scale, and the unit once', () => {
  expect(levelNumbers(['exponential 4 min', '5 min'])).toBeNull()
  expect(levelNumbers(['5 s', '5 min'])).toBeNull()
  expect(levelNumbers(['45 s ± 15 %', '50 s ± 15 %'])).toEqual({ values: [45, 50], unit: 's ± 15 %' })
  expect(levelNumbers(['45 s ± 15 %', '45 s ± 20 %'])).toBeNull()
  expect(axisWords(speed)).toEqual({ title: 'drive.speed (m/min)', levels: ['10', '12.5', '15'] })
  expect(axisWords({ name: 'drive.release', levels: ['single', 'train'] })).toEqual({ title: 'drive.release', levels: ['single', 'train'] })
})

test('means over all settings that share levels; without chance the number alone', () => {
  const { points } = gridExample(true)
  const own = points.filter(({ levels }) => levels[0] === 2 && levels[1] === 1).map(({ mean }) => mean!.mean)
  expect(own).toHaveLength(2)
  expect(
    meanAt(
      points,
      new Map([
        [0, 2],
        [1, 1],
      ]),
    ),
  ).toBeCloseTo((own[0]! + own[1]!) / 2, 10)
  expect(meanAt(points, new Map([[0, 99]]))).toBeNull()
  expect(unitsText({ mean: null, units: [12] })).toBe('12')
  expect(unitsText({ mean: { ...points[0]!.mean!, mean: 67, halfWidth: 0 }, units: [67, 67] })).toBe('67')
})

test('what one factor brings at two levels of another, either way round', () => {
  const grid = gridExample(false)
  expect(interactionWords(grid, 0, 1, 'shift')).toBe(
    'Going from 6 to 9 carriers brings 78 more units a shift with drive.speed 10 m/min, and 25 more units a shift with drive.speed 15 m/min: what more carriers bring depends on drive.speed, by 52 (99.9\u202f%: 49 to 56).',
  )
  const other = interactionWords(grid, 1, 0, 'shift')!
  expect(other).toMatch(
    /^Going from 10 m\/min to drive\.speed 15 m\/min brings 58 more units a shift with 6 carriers, and 5 more units a shift with 9 carriers/,
  )
  const found = grid.effects!.interactions[0]!
  const told = (difference: object) =>
    interactionWords(
      { ...grid, effects: { ...grid.effects!, interactions: [{ ...found, difference: { ...found.difference, ...difference } }] } },
      0,
      1,
      'shift',
    )
  expect(told({ status: 'no difference shown', low: -4, high: 1.2 })).toBe(
    'That what more carriers bring depends on drive.speed is not shown: by 4 units a shift at most.',
  )
  expect(told({ status: 'identical in every replication', halfWidth: 0, mean: 0 })).toBe(
    'What more carriers bring does not depend on drive.speed.',
  )
  expect(interactionWords({ ...grid, effects: null }, 0, 1, 'shift')).toBeNull()
})
