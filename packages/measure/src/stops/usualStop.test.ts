import { expect, test } from 'vitest'
import { usualStop } from './usualStop.ts'

test('by what the place is called', () => {
  expect(['S3', 'tightness test', 'transfer Z09', 'line'].map((place) => usualStop(place, false).between / 3600)).toEqual([10, 4, 10, 200])
  expect(usualStop('S3', true)).toMatchObject({ repair: 25 })
})
