import { expect, test } from 'vitest'
import { arrows } from './arrows.ts'

test('a difference below two standard errors has no arrow', () => {
  const [blocked, starved] = [
    [0.1, 0.02],
    [0, 0.06],
  ]
  expect(arrows(blocked!, starved!, false).arrows).toEqual([[0, 1]])
  expect(arrows(blocked!, starved!, false, [0.03]).arrows).toEqual([])
})

test('an open line has no arrow from its last station to its first', () => {
  expect(arrows([0, 0, 0.5], [0, 0, 0], false).arrows).toEqual([])
  expect(arrows([0, 0, 0.5], [0, 0, 0], true).arrows).toEqual([[2, 0]])
})

test('refused', () => {
  expect(() => arrows([0.1], [0.1], true)).toThrow('from 1 station')
  expect(() => arrows([0.1, 0.2], [0.1], true)).toThrow(expect.objectContaining({ code: 'E_UNEQUAL_LENGTH' }))
  expect(() => arrows([0.1, 1.2], [0.1, 0], true)).toThrow('A share is 1.2')
})
