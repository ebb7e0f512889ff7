import { expect, test } from 'vitest'
import { stopDeviations, waitDeviations } from './waitDeviations.ts'

const model = [
  { stop: 'jam', count: 2, minutes: 6 },
  { stop: 'leak', count: 0.5, minutes: 3 },
  { stop: 'never', count: 0, minutes: 0 },
]

test('by hand: 40 in 10 shifts where 20 are expected lie 20/√20 = 4.5 standard errors off; 26 lie 1.3', () => {
  const of = (count: number) => stopDeviations([{ stop: 'jam', count, minutes: 3 * count, shifts: 10 }], model)[0]!
  expect(of(40)).toMatchObject({ modelCount: 20, countRatio: 2, countDiffers: true, lengthRatio: 1, lengthDiffers: false })
  expect(of(26).countDiffers).toBe(false)
  expect(of(0)).toMatchObject({ minutesEach: null, lengthRatio: null, countDiffers: true, lengthDiffers: false })
})

test('by hand: 25 leaks of 12 min where 6 are expected: (2 − 1)·√25 = 5 standard errors', () => {
  const [leak] = stopDeviations([{ stop: 'leak', count: 25, minutes: 300, shifts: 50 }], model)
  expect(leak).toMatchObject({ minutesEach: 12, modelMinutesEach: 6, lengthRatio: 2, lengthDiffers: true, countDiffers: false })
})

test('what costs most minutes a shift more comes first; a stop that the model never has differs when it comes', () => {
  const found = stopDeviations(
    [
      { stop: 'never', count: 1, minutes: 1, shifts: 10 },
      { stop: 'jam', count: 60, minutes: 180, shifts: 10 },
    ],
    model,
  )
  expect(found.map(({ stop, countDiffers }) => [stop, countDiffers])).toEqual([
    ['jam', true],
    ['never', true],
  ])
})

test('what cannot be is refused by name', () => {
  expect(() => stopDeviations([{ stop: 'fire', count: 1, minutes: 1, shifts: 1 }], model)).toThrow('no stop "fire"; it has "jam", "leak"')
  expect(() => stopDeviations([{ stop: 'jam', count: 1.5, minutes: 1, shifts: 1 }], model)).toThrow('"jam": whole counts')
  expect(() => waitDeviations([{ station: 'S9', state: 'blocked', share: 0.1 }], () => null)).toThrow('no station "S9"')
  expect(() => waitDeviations([{ station: 'S1', state: 'starved', share: 12 }], () => 0.1)).toThrow('"S1": starved is a share')
})

test('waits three points apart differ, the largest first', () => {
  const found = waitDeviations(
    [
      { station: 'S1', state: 'starved', share: 0.12 },
      { station: 'S4', state: 'blocked', share: 0.2 },
    ],
    () => 0.1,
  )
  expect(found.map(({ station, differs }) => [station, differs])).toEqual([
    ['S4', true],
    ['S1', false],
  ])
})
