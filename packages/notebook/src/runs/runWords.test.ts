import { replicate } from '@loopwright/study'
import { expect, test } from 'vitest'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { oneRunSentence, runSentences } from './runWords.ts'

const scenario = testLine()
const run = (await replicate(scenario.line, { replications: 1 }, { seed: '1', workers: 0 }))[0]!

test('a run and its plan, met or missed: the plan first', () => {
  const made = { ...run, output: 251, outputPerHour: 125.5 }
  expect(runSentences(scenario, made)).toEqual([
    'The plan of 250 was met.',
    'In this run 4 carriers made 251 units in the second shift, 125.5 per clock hour.',
  ])
  expect(runSentences(scenario, { ...made, output: 249 })[0]).toBe('The plan of 250 was missed by 1 unit.')
  expect(runSentences(scenario, { ...made, output: 250 })[0]).toBe('The plan of 250 was met.')
})

test('without a plan or a calendar', () => {
  const alone = { ...scenario, plan: null, calendar: null, line: { ...scenario.line, carriers: { ...scenario.line.carriers, count: 1 } } }
  expect(runSentences(alone, { ...run, output: 1, outputPerHour: 1 })).toEqual([
    'In this run 1 carrier made 1 unit in 2 h, 1.0 per clock hour.',
  ])
})

test('a run that stood still shouts so first', () => {
  const end = { reason: 'gridlock', atSeconds: 750, waits: [], cycle: [2, 3, 4], unmanned: [] } as const
  expect(runSentences(scenario, { ...run, end })[0]).toMatch(/^GRIDLOCK after 12\.5 min/)
})

test('what goes wrong with products is said', () => {
  const said = runSentences(scenario, {
    ...run,
    rejections: 3,
    rejectedTakenOff: 1,
    supplies: [{ name: 'supply', arrivals: 9, turnedAway: 2 }] as never,
  })
  expect(said.at(-2)).toBe('Inspections rejected 3 times. 1 unit left the line rejected, and is no output.')
  expect(said.at(-1)).toBe('Of 9 products that came to the line, 2 found the queue full and were turned away.')
})

test('one run is no forecast', () =>
  expect(oneRunSentence({ one: 'shift', many: 'shifts' })).toContain('one possible shift, and no forecast'))
