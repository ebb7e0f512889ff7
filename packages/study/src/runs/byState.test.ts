import { expect, test } from 'vitest'
import { byState } from './byState.ts'

test('every state has what its place gives, in the order of the states', () => {
  expect(Object.entries(byState(['blocked', 'starved'], (place, state) => `${place} ${state}`))).toEqual([
    ['blocked', '0 blocked'],
    ['starved', '1 starved'],
  ])
})
