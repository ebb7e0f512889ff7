import { expect, test } from 'vitest'
import { likeNames } from './likeNames.ts'

test('names that differ in capitals, blanks and signs alone are told once', () => {
  expect(likeNames(['take off', 'fit', 'takeoff', 'Take-off', 'fit'], 'tasks')).toEqual([
    '"take off" and "takeoff" and "Take-off" are counted as different tasks: are they one?',
  ])
  expect(likeNames(['A', 'B', 'A'], 'variants')).toEqual([])
})
