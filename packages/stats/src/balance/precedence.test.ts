import { expect, test } from 'vitest'
import { predecessorBits } from './precedence.ts'

test('who must come before, as bits', () => {
  expect([
    ...predecessorBits({
      times: [1, 1, 1],
      arcs: [
        [0, 2],
        [1, 2],
      ],
    }),
  ]).toEqual([0, 0, 3])
})

test('a circle is printed in its order', () => {
  const arcs = [
    [0, 1],
    [1, 2],
    [2, 3],
    [3, 1],
  ] as const
  expect(() => predecessorBits({ times: [1, 1, 1, 1], arcs })).toThrow(
    /Tasks (2 → 3 → 4 → 2|3 → 4 → 2 → 3|4 → 2 → 3 → 4) wait for each other in a circle/,
  )
  expect(() => predecessorBits({ times: [1], arcs: [[0, 0]] })).toThrow('Tasks 1 → 1 wait')
})

test('refused', () => {
  expect(() => predecessorBits({ times: [], arcs: [] })).toThrow('There are no tasks')
  expect(() => predecessorBits({ times: Array(26).fill(1), arcs: [] })).toThrow('26 tasks are too many')
  expect(() => predecessorBits({ times: [1.5], arcs: [] })).toThrow('Task 1 takes 1.5: give whole numbers above 0')
  expect(() => predecessorBits({ times: [1], arcs: [[0, 1]] })).toThrow('Task 1 before task 2: there are only 1 tasks')
})
