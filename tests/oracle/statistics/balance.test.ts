import { fewestStations, LevelledOrder, levelledOrder, quotas, smallestCycle, type Tasks, takt } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { type Case, expectRelative, readCases } from './vectors.ts'

const tasksOf = ({ input }: Case): Tasks => ({ times: input.times, arcs: input.arcs.map(([a, b]: [number, number]) => [a - 1, b - 1]) })

/** any optimal grouping will do: all tasks once, none over the cycle, each after what comes before it */
function expectPossible({ times, arcs }: Tasks, cycle: number, groups: readonly (readonly number[])[]): void {
  const stationOf = new Map(groups.flatMap((group, station) => group.map((task) => [task, station] as const)))
  expect(groups.flat().sort((a, b) => a - b)).toEqual([...times.keys()])
  for (const group of groups) expect(group.reduce((sum, task) => sum + times[task]!, 0)).toBeLessThanOrEqual(cycle)
  for (const [before, after] of arcs) expect(stationOf.get(before)!).toBeLessThanOrEqual(stationOf.get(after)!)
}

test.each(readCases('balance', 'fewest stations'))('$id $input.instance, cycle $input.cycle', (one) => {
  const got = fewestStations(tasksOf(one), one.input.cycle)
  expect(got.stations).toBe(one.expect.stations)
  expectPossible(tasksOf(one), one.input.cycle, got.groups)
})

test.each(readCases('balance', 'smallest cycle'))('$id $input.instance, $input.stations stations', (one) => {
  const got = smallestCycle(tasksOf(one), one.input.stations)
  expect(got.cycle).toBe(one.expect.cycle)
  expect(got.stations).toBeLessThanOrEqual(one.input.stations)
  expectPossible(tasksOf(one), got.cycle, got.groups)
})

test.each(readCases('balance', 'takt'))('$id takt', ({ input, expect: want }) => {
  const got = takt(input.availableSeconds, input.demand)
  expectRelative(got.taktSeconds, want.takt, 1e-15)
  expectRelative(got.loadLimitSeconds, want.at85, 1e-15)
})

test.each(readCases('balance', 'refused'))('$id refused: $expect.status', (one) => {
  expect(() => fewestStations(tasksOf(one), one.input.cycle)).toThrow(`Task ${one.expect.task} takes 12, longer than the cycle of 10`)
})

test.each(readCases('sequence', 'largest lag'))('$id levelled order $input.weights', ({ input, expect: want }) => {
  const letters = levelledOrder(input.weights, input.n).map((variant) => 'ABCDE'[variant])
  expect(letters.join('')).toBe(want.order)
  const order = new LevelledOrder(input.weights)
  for (let k = 0; k < input.n; k++) order.next()
  expectRelative(order.largestDeviation, want.largestDeviation, 1e-14)
})

test.each(readCases('sequence', 'quotas'))('$id quotas $input.weights', ({ input, expect: want }) => {
  expect(quotas(input.weights, input.n)).toEqual(want.quota)
})
