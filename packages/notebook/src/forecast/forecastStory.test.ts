import { sweepHere } from '@loopwright/study'
import { expect, test } from 'vitest'
import { shownView } from '../cell.ts'
import { testLine } from '../study/testLine.test.ts'
import { forecast } from './forecast.ts'
import { type ForecastResult, forecastStory, planSentence, spreadSentence } from './forecastStory.ts'

const scenario = testLine((text) => text.replace('250 per shift', '283 per shift'))
const plan = scenario.plan!.unitsPerWindow
const sweep = sweepHere(scenario.line, [4], { seed: '1', replications: 12, plan })
const of = (units: readonly number[]): ForecastResult => ({
  kind: 'forecast',
  sweep,
  ...forecast(units, { plan, netSeconds: scenario.calendar!.netSeconds, shiftsPerWeek: 3 }),
})
const result = of(sweep.counts[0]!.units)
const story = forecastStory(scenario, result, { scenarioFile: 'ring.yaml' })

test('shift, plan, overtime and week are said, each with the numbers of the result', () => {
  const said = story.answer.sentences.join(' ')
  expect(said).toContain('With 4 carriers the line makes')
  expect(said).toContain(`nine of ten shifts make at least ${result.shift.p10!.point.toFixed(0)}.`)
  expect(said).toContain(`The plan of 283 is met in ${result.shift.meetsPlan!.successes} of 12 shifts simulated: too few`)
  expect(said).toContain(`takes ${result.overtime!.mean.mean.toFixed(1)} min of overtime a shift on average`)
  expect(said).toContain('A week of 3 shifts makes')
  expect(story.answer.sure.join(' ')).toContain('4 weeks were made of 12 simulated shifts')
})

test('the table has hour, shift and week; the hour is of net time', () => {
  const { rows } = shownView(story.table.views)
  expect(rows.map(({ cells }) => cells[0])).toEqual(['net hour', 'shift', 'week of 3 shifts'])
  // net 110 min
  expect(rows[0]!.cells[2]).toBe(((result.shift.p10!.point / 110) * 60).toFixed(1))
  expect(rows[1]!.marked).toBe(true)
  expect(shownView(story.overtime!.views).rows[0]!.cells[1]).toBe(result.overtime!.mean.mean.toFixed(1))
})

test('chances are never said to be 0 or 1, and only from enough shifts', () => {
  const said = (met: number, n: number) =>
    planSentence(of([...Array.from({ length: met }, () => 300), ...Array.from({ length: n - met }, () => 1)]).shift, 'shifts')
  expect(said(30, 30)).toMatch(/in all 30 shifts simulated; the chance is at least 88\u202f%\.$/)
  expect(said(0, 30)).toMatch(/in none of 30 shifts simulated; the chance is at most 12\u202f%\.$/)
  // Clopper–Pearson for 87 of 100, 95 %: 0.788 to 0.929 (from memory, general-purpose statistics programs agree)
  expect(said(87, 100)).toMatch(/in 87 of 100 shifts simulated \(87\u202f%\); the chance is between 79\u202f% and 93\u202f%\.$/)
})

test('with too few shifts there is no answer; where none is needed there is no table of overtime', () => {
  const none = forecastStory(scenario, of([300]), { scenarioFile: 'ring.yaml' })
  expect([none.answer.sentences[0], none.overtime]).toEqual(['No answer yet: a forecast needs at least 2 replications.', null])
  const good = forecastStory(scenario, of([300, 301]), { scenarioFile: 'ring.yaml' })
  expect(good.overtime).toBeNull()
  expect(good.answer.sentences.join(' ')).toContain('No overtime was needed')
})

test('P10, P50 and P90 say what they mean, with the limits that there are', () => {
  const one = spreadSentence('shift', 'shifts', of(Array.from({ length: 101 }, (_, index) => 200 + index)).shift)
  // 101 shifts of 200 … 300: type 7 gives 210, 250, 290; ranks of the limits by the binomial distribution with 101 and 0.1: 5 and 17
  expect(one).toBe(
    'P10 of a shift is 210 units: nine of ten shifts make as much or more (known with 95\u202f%: 204 to 216). P50 is 250: half of them do (known with 95\u202f%: 240 to 260). P90 is 290: one of ten does (known with 95\u202f%: 284 to 296).',
  )
  expect(spreadSentence('week', 'weeks', of([1, 2]).week)).toBe('0 simulated weeks are too few to say how weeks spread.')
  // four weeks: no lower limit for P10, none for P50, no upper one for P90
  expect(story.spread[1]).toMatch(
    /as much or more \([^)]*: at most \d+\)\. P50 is \d+: half of them do\. P90 [^(]*\([^)]*: at least \d+\)\.$/,
  )
})
