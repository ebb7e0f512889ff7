import { expect, test } from 'vitest'
import { handlingFindings, heightFindings, liftFindings } from './people.ts'
import { NOTHING_GIVEN } from './screening.ts'

const heights = (height: number, work: 'precision' | 'light' | 'heavy') =>
  heightFindings({ ...NOTHING_GIVEN, heights: [{ place: 'S2', height, work }] }).map(({ word }) => word)

test('950 mm (common practice, no source) against Pheasant & Haslegrave 2006 and NIOSH 97-117, which do not agree', () => {
  expect(heights(0.95, 'light')).toEqual(['within guidance value', 'above guidance value'])
  expect(heights(0.95, 'precision')).toEqual(['above guidance value', 'within guidance value'])
  expect(heights(0.85, 'heavy')).toEqual(['within guidance value', 'within guidance value'])
  expect(heights(0.7, 'heavy')).toEqual(['above guidance value', 'above guidance value'])
})

test('320 units of six pushes are 1 920 a shift: told without a verdict', () => {
  const [count, rate] = handlingFindings([{ place: 'S2', perShift: 1920, netSeconds: 27_000 }], NOTHING_GIVEN)
  expect(count).toMatchObject({ value: 1920, word: 'not checked', guidance: null })
  expect(rate!.value).toBeCloseTo(1920 / 450, 12)
  expect(rate!.why).toContain('ISO 11228-3')
})

test('lifting is off until the constant was compared with the printed source', () => {
  const lifts = [{ place: 'S1', mass: 30 }]
  expect(liftFindings({ ...NOTHING_GIVEN, lifts })[0]!.word).toBe('not checked')
  expect(liftFindings({ ...NOTHING_GIVEN, lifts, fromMemory: true })[0]!.word).toBe('above guidance value')
})
