import { expect, test } from 'vitest'
import { mixGroups, stopGroups } from './groups.ts'

const line = {
  stations: [{ name: 'S1' }, { name: 'S2' }],
  zones: [{ name: 'Z1' }, { name: 'Z2' }],
  breakdowns: [
    { name: 'jam S1', part: { kind: 'station', index: 0 } },
    { name: 'jam S2', part: { kind: 'station', index: 1 } },
    { name: 'tool', part: { kind: 'station', index: 1 } },
    { name: 'fault Z2', part: { kind: 'transfer', index: 1 } },
    { name: 'power S1', part: { kind: 'section', index: 0 } },
  ],
} as unknown as Parameters<typeof stopGroups>[0]

test('one stop at several places is one group; a name that only looks like a place is kept', () => {
  expect(stopGroups(line)).toEqual([
    { name: 'jam', sources: ['jam S1', 'jam S2'] },
    { name: 'tool', sources: ['tool'] },
    { name: 'fault', sources: ['fault Z2'] },
    { name: 'power S1', sources: ['power S1'] },
  ])
})

test('a variant belongs to its kind and to each of its options', () => {
  expect(mixGroups({ variants: ['small', 'small + kit', 'large', 'large + kit'] })).toEqual([
    { name: 'small', variants: [0, 1] },
    { name: 'kit', variants: [1, 3] },
    { name: 'large', variants: [2, 3] },
  ])
})
