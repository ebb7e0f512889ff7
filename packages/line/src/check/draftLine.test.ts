import { expect, test } from 'vitest'
import { isRing } from './draftLine.ts'

const zones = [{}, {}, {}] as never
const paths = (...ends: [number, number][]) => ends.map(([from, to]) => ({ from, to })) as never

test('a ring leads from each zone to the next one, all round', () => {
  expect(isRing({ zones, paths: paths([0, 1], [1, 2], [2, 0]) })).toBe(true)
  expect(isRing({ zones, paths: paths([0, 1], [1, 2], [2, 1]) })).toBe(false)
  expect(isRing({ zones, paths: paths([0, 1], [1, 2]) })).toBe(false)
})
