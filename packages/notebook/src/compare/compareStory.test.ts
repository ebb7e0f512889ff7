import { type CompareResult, compareLines } from '@loopwright/study/compare'
import { beforeAll, expect, test } from 'vitest'
import { shownView } from '../cells/cell.ts'
import { cellTables } from '../cells/cellTables.ts'
import { movedStations } from '../study/movedStations.ts'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { TOLD_TWICE, toldTwice } from '../../../../tests/helpers/toldTwice.ts'
import { type CompareStory, compareStory, lineAverages } from './compareStory.ts'

const today = testLine()
const beside = movedStations(today, { S2: 'Z06' })
const lineOf = (scenario: typeof today, name: string) => ({ name, line: scenario.line, plan: scenario.plan!.unitsPerWindow })
const lines = [lineOf(today, 'today'), lineOf(beside, 'fit beside test'), lineOf(today, 'the same again')]
const options = { scenarioFile: 'ring.yaml' }
let result: CompareResult
let story: CompareStory
beforeAll(async () => {
  result = await compareLines(lines, { replications: 4 }, { seed: '1', workers: 0 })
  story = compareStory([today, beside, today], result, options)
})

test('averages see no difference where the simulation shows one', () => {
  expect(lineAverages(beside)).toEqual(lineAverages(today))
  const [, moved, same] = shownView(story.averages!.views).rows.map(({ cells }) => cells.slice(1))
  expect(moved).toEqual(same)
  expect(result.pairs[0]!.difference.high).toBeLessThan(0)
  expect(story.answer.sentences[0]).toMatch(/^With “today” the plan of 250 is met in/)
  expect(story.answer.sentences[3]).toMatch(/^“fit beside test” makes [\d.]+ fewer units a shift than “today” \(98\.3\u202f%: /)
  expect(story.answer.sentences[4]).toBe('“the same again” makes exactly what “today” makes, in each of the shifts simulated.')
})

test('averages by hand', () => {
  // Times lie on a grid of the clock, 4 digits are left. Moves 1 m at 0.5 m/s: 2 s; 10 of them and 3 + 6 + 15 + 18 s of work: 62 s. Exchange at S3: 2 + 18 + clear 0.8/0.5 = 21.6 s. Net 110 min: 305.6 units.
  const { lapSeconds, exchangeSeconds, holeLapSeconds, unitsPerWindow } = lineAverages(today)
  expect([lapSeconds, exchangeSeconds, holeLapSeconds]).toEqual([62, 21.6, 16].map((value) => expect.closeTo(value, 4)))
  expect(unitsPerWindow).toBeCloseTo(6600 / 21.6, 4)
})

test('the table begins with what the others are set beside, the inputs that differ are named', () => {
  const { rows } = shownView(story.table.views)
  expect(rows.map(({ marked }) => marked)).toEqual([true, false, false])
  expect(rows[0]!.cells[3]).toBe('')
  expect(rows[1]!.cells[3]).toMatch(/^−[\d.]+ ± [\d.]+$/)
  expect(shownView(story.changed.views).rows.map(({ cells }) => cells)).toEqual([['fit beside test', 'stations.S2.zone', 'Z04', 'Z06']])
  expect(new Set([story.answer, story.table, story.changed, story.averages!].map(({ id }) => id)).size).toBe(4)
})

test('stops and gridlock are said, and only then', () => {
  expect(story.warnings).toEqual([])
  const bad = { ...result, partial: true, replications: 9, lines: result.lines.map((line) => ({ ...line, gridlocks: 1 })) }
  const told = compareStory([today, beside, today], bad, options)
  const [partial, still] = told.warnings
  expect(partial!.markdown).toBe('4 of 9 shifts are simulated. The intervals are wider than asked for.')
  expect(still).toMatchObject({
    title: 'Gridlock: the loop stands still',
    markdown: expect.stringContaining('- “today”: in 1 of 4 shifts'),
  })
  expect(toldTwice(told.cells)).toEqual(TOLD_TWICE)
})

test('terminal and page tell the same; files hold what every line made', () => {
  expect(toldTwice(story.cells)).toEqual(TOLD_TWICE)
  const tables = new Map(cellTables(story.cells).map(({ name, rows }) => [name, rows]))
  expect(tables.get('compare-units')).toHaveLength(12)
  expect(tables.get('compare-units')![5]).toEqual(['fit beside test', 1, result.lines[1]!.units[1]])
})
