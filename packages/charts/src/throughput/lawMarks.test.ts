import { expect, test } from 'vitest'
import { baseLineSweep } from '../examples/baseLine.ts'
import { lawBranches, lawKey, lawLines } from './lawMarks.ts'

const sweep = baseLineSweep()
const branches = lawBranches(sweep)

test('each branch runs over the counts it limits, and one beyond', () => {
  expect(branches.map(({ branch, points }) => [branch, points[0]!.carriers, points.at(-1)!.carriers])).toEqual([
    ['carrier-limited', 5, 8],
    ['station-limited', 7, 17],
    ['space-limited', 16, 17],
  ])
})

test('units of a window are the rate times the seconds worked', () => {
  // 5 carriers, a lap of 535.6 s, 27 000 s
  expect(branches[0]!.points[0]!.units).toBeCloseTo((5 / 535.6) * 27_000, 9)
  expect(lawLines(branches)[0]!.points[0]).toEqual([5, branches[0]!.points[0]!.units])
})

test('a sweep that meets one limit shows one', () => {
  const counts = sweep.counts.filter(({ carriers }) => carriers >= 9 && carriers <= 12)
  expect(lawBranches({ ...sweep, counts }).map(({ branch }) => branch)).toEqual(['station-limited'])
})

test('exact and estimate are told apart, and the line styles too, in the key as in the chart', () => {
  expect(lawKey(branches, true)[0]!.text).toBe('law, exact: limited by carriers')
  expect(lawKey(branches, false)[0]!.text).toBe('law, an estimate: limited by carriers')
  const dashes = lawLines(branches).map(({ dash }) => String(dash))
  expect(new Set(dashes).size).toBe(3)
  expect(lawKey(branches, true).map(({ dash }) => String(dash))).toEqual(dashes)
})

test('no branch, no line', () => expect([lawLines([]), lawKey([], true)]).toEqual([[], []]))
