import { formatNumber } from '@loopwright/charts/table'
import { beforeAll, expect, test } from 'vitest'
import { shiftsRuns } from '../../../../tests/helpers/decisionRuns.ts'
import { TOLD_TWICE, toldTwice } from '../../../../tests/helpers/toldTwice.ts'
import { shiftsOf, type ShiftsRuns } from './shiftsFigures.ts'
import { shiftsStory } from './shiftsStory.ts'

let runs: ShiftsRuns
beforeAll(async () => {
  runs = await shiftsRuns(100)
})

test('the first sentence is the week with its shifts, the second each shift', () => {
  const { answer, cells } = shiftsStory(runs)
  const { week } = shiftsOf(runs)
  expect(answer.sentences[0]).toContain(
    `at least ${formatNumber(week.p10!.point, 0)} units in nine of ten weeks of 5 early, 5 late and 4 night shifts`,
  )
  expect(answer.sentences.filter((sentence) => /limits the \w+ shift: S3 Leak test, which can do/.test(sentence))).toHaveLength(3)
  expect(answer.sentences[1]).toMatch(/in nine of ten early shifts, .* late shifts, .* night shifts\.$/)
  expect(toldTwice(cells)).toEqual(TOLD_TWICE)
})

test('too few weeks promise shifts alone', () => {
  const few = runs.shifts.map((shift) => {
    const { units } = shift.forecast.shift
    return { ...shift, forecast: { ...shift.forecast, shift: { ...shift.forecast.shift, units: units.slice(0, 40) } } }
  })
  const { answer, sure, table } = shiftsStory({ ...runs, shifts: few })
  expect(answer.sentences[0]).toContain('in nine of ten early shifts')
  expect(answer.sentences.join(' ')).not.toContain('weeks')
  expect(sure.sentences.join(' ')).toContain('Nothing is promised of weeks: there are 8 weeks')
  expect(table.views.of[0]!.content.rows.at(-1)!.cells.slice(1)).toEqual(['–', '–', '–'])
})

test('each shift has its people, net time and plan', () => {
  const rows = shiftsStory(runs).shifts.views.of[0]!.content.rows.map(({ cells }) => cells.slice(0, 5))
  expect(rows).toEqual([
    ['early', '5', '3', '435', '400'],
    ['late', '5', '2', '420', '320'],
    ['night', '4', '0', '510', '520'],
  ])
})
