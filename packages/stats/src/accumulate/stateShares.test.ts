import { expect, test } from 'vitest'
import { stateShares } from './stateShares.ts'

const spells = [
  { state: 'working', from: 0, to: 6 },
  { state: 'break', from: 6, to: 10 },
]

test('the denominator is told', () => {
  expect(stateShares(spells, 0, 8)).toEqual({ seconds: { working: 6, break: 2 }, shares: { working: 0.75, break: 0.25 }, denominator: 8 })
  expect(stateShares(spells, 0, 8, ['break']).denominator).toBe(6)
})

test('spells that leave a gap or overlap, a window without length, and one of breaks alone without them are refused', () => {
  expect(() => stateShares(spells, 0, 11)).toThrow('The spells cover 10 s of a window of 11 s')
  expect(() => stateShares([...spells, { state: 'working', from: 5, to: 7 }], 0, 10)).toThrow('cover 12 s')
  expect(() => stateShares(spells, 5, 5)).toThrow('has no length')
  expect(() => stateShares(spells, 7, 9, ['break'])).toThrow('has no length')
})
