import { expect, test } from 'vitest'
import { fewestStations, smallestCycle } from './fewestStations.ts'

test('a chain has no choice', () => {
  const chain = {
    times: [4, 4, 4],
    arcs: [
      [0, 1],
      [1, 2],
    ] as const,
  }
  expect(fewestStations(chain, 7).groups).toEqual([[0], [1], [2]])
  expect(fewestStations(chain, 12).groups).toEqual([[0, 1, 2]])
})

test('free tasks pack as well as can be', () => {
  // 4+3, 4+3, 2+2+2+1: 21 in three stations of 7
  const free = { times: [4, 4, 3, 3, 2, 2, 2, 1], arcs: [] }
  expect(fewestStations(free, 7).stations).toBe(3)
  expect(smallestCycle(free, 3).cycle).toBe(7)
  expect(smallestCycle(free, 1).cycle).toBe(21)
  expect(smallestCycle(free, 99).cycle).toBe(4)
})

test('a cycle that is no whole number is worth its whole part', () => {
  const tasks = { times: [3, 4, 3, 4], arcs: [] }
  expect(fewestStations(tasks, 7.9).stations).toBe(2)
  expect(fewestStations(tasks, 6.9).stations).toBe(3)
})

test('refused', () => {
  expect(() => fewestStations({ times: [5], arcs: [] }, 0)).toThrow('The cycle is 0')
  expect(() => fewestStations({ times: [5, 12], arcs: [] }, 10)).toThrow('Task 2 takes 12, longer than the cycle of 10')
  expect(() => smallestCycle({ times: [5], arcs: [] }, 0)).toThrow('The number of stations is 0')
  expect(() => fewestStations({ times: Array(12).fill(1), arcs: [] }, 5, 4000)).toThrow('more than 4000 sets')
  expect(fewestStations({ times: Array(12).fill(1), arcs: [] }, 5, 4100).stations).toBe(3)
})
