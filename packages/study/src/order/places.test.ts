import { expect, test } from 'vitest'
import { placesOf, withPlaces } from './places.ts'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'

const { line } = testLine()

test('stations stand where they are put, by index or by name; the others stay', () => {
  const [, , third] = placesOf(line)
  expect(placesOf(withPlaces(line, { S1: 'Z02', S2: 4 }))).toEqual([1, 4, third])
  expect(placesOf(withPlaces(line, [5, 4, 3]))).toEqual([5, 4, 3])
  expect(withPlaces(line, { S1: 'Z02' }).zones).toBe(line.zones)
})

test('what is not there is told with what there is', () => {
  expect(() => withPlaces(line, [0, 99, 6])).toThrow('no zone called "99"; there are Z01, Z02')
  expect(() => withPlaces(line, { S2: 'Z99' })).toThrow('no zone called "Z99"')
  expect(() => withPlaces(line, { S9: 'Z01' })).toThrow('no station called "S9"; there are S1, S2, S3')
  expect(() => withPlaces(line, [0])).toThrow('3 stations take 3 places, not 1')
})
