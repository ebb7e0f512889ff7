import { expect, test } from 'vitest'
import { sentences } from '../check/sentences.ts'
import { operatorsOf, rejectsOf, walksOf } from './people.ts'
import { createReport } from './report.ts'
import type { LineSketch } from './sketch.ts'
import { namesOf } from './values.ts'

const stations = namesOf(['S1', 'S2'], sentences.unknownStation)
const sketch = (of: Partial<LineSketch>): LineSketch => ({ zones: 2, carriers: 1, end: 1, ...of })

test('an operator starts at the first of its stations, or where it is said', () => {
  const operators = { Ann: { stations: ['S2', 'S1', 'S2'] }, Ben: { stations: ['S1', 'S2'], start: 'S2' } }
  expect(operatorsOf(createReport(), sketch({ operators }), stations)).toEqual([
    { name: 'Ann', stations: [1, 0], start: 1 },
    { name: 'Ben', stations: [0, 1], start: 1 },
  ])
})

test('walks between stations by name', () => {
  expect(walksOf(createReport(), sketch({ walks: [{ between: ['S1', 'S2'], lasts: 4 }] }), stations)).toEqual([
    { between: [0, 1], seconds: 4 },
  ])
})

test('no walk from a station to itself, whether by name or by number; of unknown stations only that is told', () => {
  const codes = (between: readonly [string | number, string | number]): string[] => {
    const report = createReport()
    walksOf(report, sketch({ walks: [{ between, lasts: 4 }] }), stations)
    return report.problems.map(({ code }) => code)
  }
  expect(codes(['S1', 0])).toEqual(codes(['S1', 'S1']))
  expect(codes(['S1', 'S1'])).toEqual(['E_WALK'])
  expect(codes(['S8', 'S9'])).toEqual(['E_UNKNOWN_STATION', 'E_UNKNOWN_STATION'])
})

test('inspections and rework by task, in the order of the tasks', () => {
  const rejects = sketch({ inspections: { test: 0.1, look: 0.2 }, rework: { mend: 'only', fit: 'again' } })
  expect(rejectsOf(createReport(), rejects, { stations: [], tasks: ['fit', 'look', 'test', 'mend'] })).toEqual({
    inspections: [
      { task: 1, rejectProbability: 0.2 },
      { task: 2, rejectProbability: 0.1 },
    ],
    rework: [
      { task: 0, only: false },
      { task: 3, only: true },
    ],
  })
})
