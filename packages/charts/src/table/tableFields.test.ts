import { expect, test } from 'vitest'
import { fieldName, meanFields } from './tableFields.ts'

test('a mean that is not known leaves three empty cells', () => {
  expect(meanFields<null>('units', 'units per shift', () => null).map(([, , value]) => value(null, 0))).toEqual([null, null, null])
})

test('names of columns', () => {
  expect(fieldName('Mean time, s (±)')).toBe('mean_time_s')
})
