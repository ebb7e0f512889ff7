import { expect, test } from 'vitest'
import { baseLineSweep } from '../examples/baseLine.ts'
import { lawBranches, lawLayers } from './lawLayers.ts'

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
})

test('a sweep that meets one limit shows one', () => {
  const counts = sweep.counts.filter(({ carriers }) => carriers >= 9 && carriers <= 12)
  expect(lawBranches({ ...sweep, counts }).map(({ branch }) => branch)).toEqual(['station-limited'])
})

test('exact and estimate are told apart, and the line styles too', () => {
  const texts = (exact: boolean) => JSON.stringify(lawLayers(branches, [200, 360], exact))
  expect(texts(true)).toContain('Limits by the law, exact')
  expect(texts(false)).toContain('Limits by the law, an estimate')
  const dashes = [...texts(true).matchAll(/"type":"line"[^}]*"strokeDash":(\[[\d,]+\])/g)].map((found) => found[1])
  expect(dashes.length).toBe(3)
  expect(new Set(dashes).size).toBe(3)
})

test('no branch, no layer', () => expect(lawLayers([], [0, 1], true)).toEqual([]))
