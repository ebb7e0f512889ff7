import { describe, expect, test } from 'vitest'
import { CountStudy } from './countStudy.ts'
import { END_REASONS, type RowLayout, rowLayout } from '../runs/runRow.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { firstAnswer, leadingCount } from './firstAnswer.ts'

const layout: RowLayout = rowLayout(stationLoop())
const gridlock = END_REASONS.indexOf('gridlock')

/** A study in which each run makes so many units; one run, if named, stands still. */
function studied(carriers: number, units: readonly number[], standing = -1): CountStudy {
  const study = new CountStudy(carriers, layout)
  study.add(
    0,
    units.map((made, index) => {
      const row = new Float64Array(layout.length)
      row[layout.units] = made
      row[layout.end] = index === standing ? gridlock : END_REASONS.length - 1 === gridlock ? 0 : END_REASONS.length - 1
      return row
    }),
  )
  return study
}
const runs = (count: number, made: number): number[] => Array.from({ length: count }, () => made)

describe('the count that leads', () => {
  test('has the highest mean over pilot and judged runs; of equals the smallest', () => {
    const counts = [
      [studied(5, [90]), studied(5, runs(3, 100))],
      [studied(6, [106]), studied(6, runs(1, 95))],
      [studied(7, [100]), studied(7, runs(2, 101))],
    ]
    // means 97.5, 100.5 and 100.67
    expect(leadingCount(counts)).toBe(7)
    expect(leadingCount(counts.slice(0, 2))).toBe(6)
    expect(leadingCount([counts[1]!, [studied(9, runs(4, 100.5))]])).toBe(6)
  })

  test('is not known before each has a run', () => {
    expect(leadingCount([[studied(5, runs(3, 100))], [studied(6, [])]])).toBeNull()
  })

  test('never stood still, unless all did', () => {
    const jammed = studied(6, runs(4, 120), 2)
    expect(leadingCount([[studied(5, runs(4, 100))], [jammed]])).toBe(5)
    expect(leadingCount([[studied(5, runs(4, 100), 0)], [jammed]])).toBe(6)
  })
})

describe('the first answer', () => {
  const wanted = [15, 200]
  const counts = (extra: number) => [
    [studied(5, [...runs(7, 90), ...runs(extra, 500)]), studied(5, [...runs(3, 90), ...runs(extra, 500)])],
    [studied(6, [...runs(7, 99.5), ...runs(extra, 0)]), studied(6, [...runs(3, 99.5), ...runs(extra, 0)])],
    [studied(7, [...runs(7, 100), ...runs(extra, 0)]), studied(7, [...runs(3, 100), ...runs(extra, 0)])],
  ]

  test('looks at 10 runs of each and at no other, so that it is the same whoever is ahead', () => {
    const told = { replications: 10, leading: 7, unitsMean: 100, fewest: 6, within: 0.01 }
    expect(firstAnswer(counts(0), wanted, 0.01)).toEqual(told)
    expect(firstAnswer(counts(4), wanted, 0.01)).toEqual(told)
    expect(firstAnswer(counts(4), wanted, 0.001)).toEqual({ ...told, fewest: 7, within: 0.001 })
  })

  test('waits for all of them', () => {
    const late = [...counts(0).slice(0, 2), [studied(7, runs(6, 100)), studied(7, runs(9, 100))]]
    expect(firstAnswer(late, wanted, 0.01)).toBeNull()
    expect(firstAnswer([...counts(0).slice(0, 2), [studied(7, runs(7, 100)), studied(7, runs(2, 100))]], wanted, 0.01)).toBeNull()
  })

  test('of one count alone needs no pilot; where there are only 10 runs, the result itself says it', () => {
    expect(firstAnswer([[studied(5, runs(10, 90))]], [11], 0.01)).toMatchObject({ leading: 5, unitsMean: 90 })
    expect(firstAnswer([[studied(5, runs(10, 90))]], [10], 0.01)).toBeNull()
  })

  test('a count that stood still among them does not lead and is not enough; later ones are not looked at', () => {
    const still = (at: number) => [counts(4)[0]!, [studied(6, runs(15, 99.5)), studied(6, runs(9, 99.5), at)], counts(4)[2]!]
    expect(firstAnswer(still(2), wanted, 0.01)).toMatchObject({ leading: 7, fewest: 7 })
    expect(firstAnswer(still(3), wanted, 0.01)).toMatchObject({ leading: 7, fewest: 6 })
  })
})
