import { type CompareResult, compareLines, hereRunner } from '@loopwright/study'
import { beforeAll, expect, test } from 'vitest'
import { shownView } from '../cell.ts'
import { movedStations } from '../study/movedStations.ts'
import { testLine } from '../study/testLine.test.ts'
import { type CompareStory, compareStory, lineAverages } from './compareStory.ts'

const today = testLine()
const beside = movedStations(today, { S2: 'Z06' })
const lineOf = (scenario: typeof today, name: string) => ({ name, line: scenario.line, plan: scenario.plan!.unitsPerWindow })
const lines = [lineOf(today, 'today'), lineOf(beside, 'fit beside test'), lineOf(today, 'the same again')]
const options = { scenarioFile: 'ring.yaml' }
let result: CompareResult
let story: CompareStory
beforeAll(async () => {
  result = await compareLines(lines, { seed: '1', replications: 4 }, hereRunner())
  story = compareStory([today, beside, today], result, options)
})

test('averages see no difference where the simulation shows one', () => {
  expect(lineAverages(beside)).toEqual(lineAverages(today))
  const [, moved, same] = shownView(story.averages.views).rows.map(({ cells }) => cells.slice(1))
  expect(moved).toEqual(same)
  expect(result.pairs[0]!.difference.high).toBeLessThan(0)
  expect(story.answer.sentences[0]).toMatch(
    /^“fit beside test” makes [\d.]+ fewer units a shift than “today” in the same random worlds \(98\.3\u202f%: /,
  )
  expect(story.answer.sentences[1]).toBe('“the same again” makes exactly what “today” makes, in every replication.')
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
  expect(rows[0]!.cells[2]).toBe('')
  expect(rows[1]!.cells[2]).toMatch(/^−[\d.]+ ± [\d.]+$/)
  expect(shownView(story.changed.views).rows.map(({ cells }) => cells)).toEqual([['fit beside test', 'stations.S2.zone', 'Z04', 'Z06']])
  expect(new Set([story.answer, story.table, story.changed, story.averages].map(({ id }) => id)).size).toBe(4)
})

test('stops and gridlock are said, and only then', () => {
  expect(story.warnings).toEqual([])
  const bad = { ...result, partial: true, lines: result.lines.map((line) => ({ ...line, gridlocks: 1 })) }
  const [partial, still] = compareStory([today, beside, today], bad, options).warnings
  expect(partial!.markdown).toContain('4 of 4 replications are in')
  expect(still!.markdown).toContain('- today: in 1 of 4 replications')
})
