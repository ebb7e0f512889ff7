import { expect, test } from 'vitest'
import { factorial } from './factorial.ts'

const factor = (name: string, count: number) => ({ name, levels: Array.from({ length: count }, (_, index) => `${index}`) })

test('every setting once, the last factor fastest', () => {
  const settings = factorial([factor('a', 2), factor('b', 3), factor('c', 2)])
  expect(settings).toHaveLength(12)
  expect(new Set(settings.map(String)).size).toBe(12)
  expect(settings.slice(0, 4)).toEqual([
    [0, 0, 0],
    [0, 0, 1],
    [0, 1, 0],
    [0, 1, 1],
  ])
})

test('one factor is a list of its levels', () => expect(factorial([factor('a', 3)])).toEqual([[0], [1], [2]]))
