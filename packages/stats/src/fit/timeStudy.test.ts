import { expect, test } from 'vitest'
import { drift, fences, observationsNeeded } from './timeStudy.ts'

test('a foreign element is flagged with its row, and stays', () => {
  const values = [20, 21, 19, 22, 60, 20, 21]
  expect(fences(values).flaggedRows).toEqual([5])
  expect(values).toHaveLength(7)
  expect(fences([1, 2, 3, 4]).flaggedRows).toEqual([])
})

test('learning is seen', () => {
  expect(drift([30, 29, 28, 27, 26, 25, 24, 23, 22, 21]).warn).toBe(true)
  expect(drift([26, 21, 23, 29, 28, 22, 25, 30, 24, 27])).toMatchObject({ limit: 2 / Math.sqrt(10), warn: false })
})

test('a finer mean takes more values', () => {
  const values = [20, 22, 19, 24, 21]
  expect(observationsNeeded(values, 0.02)).toBeGreaterThan(observationsNeeded(values, 0.05))
  expect(observationsNeeded([5, 5, 5], 0.01)).toBe(2)
})

test('refused', () => {
  expect(() => fences([1, 2, 3])).toThrow('Cannot give fences from 3 values')
  expect(() => observationsNeeded([1, 2], 0)).toThrow('The relative half-width is 0')
  expect(() => observationsNeeded([0, 0], 0.1)).toThrow('The mean of the times is 0')
  expect(() => observationsNeeded([1, 90], 0.0001)).toThrow('More than 100,000 values')
})
