import { sweepCarriers } from '@loopwright/study'
import { expect, test } from 'vitest'
import { shownView } from '../cells/cell.ts'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { forecast } from './forecast.ts'
import type { ForecastResult } from './forecastOf.ts'
import { forecastStory, spreadSentence } from './forecastStory.ts'

const scenario = testLine((text) => text.replace('250 per shift', '283 per shift'))
const plan = scenario.plan!.unitsPerWindow
const sweep = await sweepCarriers(scenario.line, { counts: [4], replications: 12, plan }, { seed: '1', workers: 0 })
const of = (units: readonly number[]): ForecastResult => ({
  kind: 'forecast',
  sweep,
  ...forecast(units, { plan, netSeconds: scenario.calendar!.netSeconds, shiftsPerWeek: 3 }),
})
const result = of(sweep.counts[0]!.units)
/** twenty weeks: as many as are told of */
const weeks = of(Array.from({ length: 60 }, (_, index) => 275 + ((index * 7) % 20)))
const story = forecastStory(scenario, result, { scenarioFile: 'ring.yaml' })

test('shift, plan, overtime and week are said, each with the numbers of the result', () => {
  const said = story.answer.sentences.join(' ')
  expect(said).toContain('With 4 carriers the loop makes')
  expect(said).toContain(`nine of ten shifts make at least ${result.shift.p10!.point.toFixed(0)}.`)
  expect(said).toContain(`The plan of 283 is met in ${result.shift.meetsPlan!.successes} of 12 shifts simulated: too few`)
  expect(said).toContain(`takes ${result.overtime!.mean.mean.toFixed(1)} min of overtime a shift on average`)
  expect(story.sure.sentences.join(' ')).toContain('12 simulated shifts make 4 weeks of 3, and a forecast of weeks takes 20 or more')
  const many = forecastStory(scenario, weeks, { scenarioFile: 'ring.yaml' })
  expect(many.answer.sentences.join(' ')).toMatch(
    /A week of 3 shifts makes 8\d\d units on average; nine of ten such weeks make at least 8\d\d\. The plan of 849 is met in/,
  )
  expect(many.sure.sentences.join(' ')).toContain('20 weeks were made of 60 simulated shifts')
})

test('the table has hour, shift and week; the hour is of net time', () => {
  const { rows } = shownView(story.table.views)
  expect(rows.map(({ cells }) => cells[0])).toEqual(['net hour', 'shift'])
  const { rows: more } = shownView(forecastStory(scenario, weeks, { scenarioFile: 'ring.yaml' }).table.views)
  expect(more.map(({ cells }) => cells[0])).toEqual(['net hour', 'shift', 'week of 3 shifts'])
  // net 110 min
  expect(rows[0]!.cells[2]).toBe(((result.shift.p10!.point / 110) * 60).toFixed(1))
  expect(rows[1]!.marked).toBe(true)
  expect(shownView(story.overtime!.views).rows[0]!.cells[1]).toBe(result.overtime!.mean.mean.toFixed(1))
})

test('with too few shifts there is no answer; where none is needed there is no table of overtime', () => {
  const none = forecastStory(scenario, of([300]), { scenarioFile: 'ring.yaml' })
  expect([none.answer.sentences[0], none.overtime]).toEqual(['No answer yet: a forecast needs at least 2 simulated shifts.', null])
  const good = forecastStory(scenario, of([300, 301]), { scenarioFile: 'ring.yaml' })
  expect(good.overtime).toBeNull()
  expect(good.answer.sentences.join(' ')).toContain('No overtime was needed')
})

test('no overtime makes up for a list of products that ran out', () => {
  const dry: ForecastResult = { ...result, sweep: { ...sweep, counts: [{ ...sweep.counts[0]!, outOfProducts: 12 }] } }
  const told = forecastStory(scenario, dry, { scenarioFile: 'ring.yaml' })
  expect(told.overtime).toBeNull()
  expect(told.answer.sentences.join(' ')).toContain('Overtime does not make up what is missing')
  expect(told.answer.sentences.join(' ')).not.toMatch(/min of overtime/)
})

test('P10, P50 and P90 say what they mean, with the limits that there are', () => {
  const one = spreadSentence('shift', 'shifts', of(Array.from({ length: 101 }, (_, index) => 200 + index)).shift)
  // 101 shifts of 200 … 300: type 7 gives 210, 250, 290; ranks of the limits by the binomial distribution with 101 and 0.1: 5 and 17
  expect(one).toBe(
    'P10 of a shift is 210 units: nine of ten shifts make as much or more (known with 95\u202f%: 204 to 216). P50 is 250: half of them do (known with 95\u202f%: 240 to 260). P90 is 290: one of ten does (known with 95\u202f%: 284 to 296).',
  )
  expect(spreadSentence('week', 'weeks', of([1, 2]).week)).toBe('0 simulated weeks are too few to say how weeks spread.')
  // four weeks: no lower limit for P10, none for P50, no upper one for P90
  expect(spreadSentence('week', 'weeks', result.week)).toMatch(
    /as much or more \([^)]*: at most \d+\)\. P50 is \d+: half of them do\. P90 [^(]*\([^)]*: at least \d+\)\.$/,
  )
})
