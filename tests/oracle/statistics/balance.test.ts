import { mostBehind } from '@loopwright/stats'
import { fewestStations, smallestCycle, type Tasks } from '@loopwright/stats/procedures'
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

test.each(readCases('balance', 'refused'))('$id refused: $expect.status', (one) => {
  expect(() => fewestStations(tasksOf(one), one.input.cycle)).toThrow(`Task ${one.expect.task} takes 12, longer than the cycle of 10`)
})

test.each(readCases('sequence', 'largest lag'))('$id levelled order $input.weights', ({ input, expect: want }) => {
  const weights: number[] = input.weights
  const sum = weights.reduce((all, weight) => all + weight, 0)
  const given = weights.map(() => 0)
  let letters = ''
  let largest = 0
  for (let k = 0; k < input.n; k++) {
    const variant = mostBehind(weights, sum, given, k)
    given[variant]!++
    letters += 'ABCDE'[variant]
    largest = Math.max(largest, ...weights.map((weight, i) => Math.abs((k + 1) * weight - sum * given[i]!) / sum))
  }
  expect(letters).toBe(want.order)
  expectRelative(largest, want.largestDeviation, 1e-14)
})
