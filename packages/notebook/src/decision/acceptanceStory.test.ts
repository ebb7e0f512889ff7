import { expect, test } from 'vitest'
import { madeUpTrials } from '../../../../tests/helpers/decisionRuns.ts'
import { RING } from '../../../../tests/helpers/scenarioTexts.ts'
import { TOLD_TWICE, toldTwice } from '../../../../tests/helpers/toldTwice.ts'
import { readScenario } from '@loopwright/scenario'
import { acceptanceOf, acceptanceStory } from './acceptanceStory.ts'

const section = { of: 0, seconds: 3600, lookSeconds: 1800, share: 0.9, longer: 0.1, falseAlarm: 0.1, miss: 0.1, trialsMost: 3 }
const result = acceptanceOf(section, madeUpTrials())
const { scenario } = readScenario(RING)

test('the first sentence is the band, the second the test with both errors', () => {
  const { answer, cells } = acceptanceStory(scenario!, 'loop', section, result)
  expect(answer.sentences[0]).toBe('A line that meets the forecast of “loop” makes 100 to 104 in a 1-hour trial, in nine of ten trials.')
  expect(answer.sentences[1]).toMatch(
    /^Passed from 100 units on in one 1-hour trial: a line that meets its forecast fails in 0.% of such tests, and one whose tasks take 10.% longer passes in 0.%\.$/,
  )
  expect(answer.figures!.map(({ label, value }) => `${label}: ${value}`).slice(0, 2)).toEqual([
    'Passed from: 100',
    'Band of one 1-hour trial: 100 to 104',
  ])
  expect(toldTwice(cells)).toEqual(TOLD_TWICE)
})

test('where no test tells the lines apart, it says so and what to do', () => {
  const alike = { ...madeUpTrials(), slower: madeUpTrials().healthy }
  const { answer } = acceptanceStory(scenario!, 'loop', section, acceptanceOf(section, alike))
  expect(answer.sentences[1]).toMatch(
    /^No test of up to 3 trials tells them apart as asked: .* Tasks that take 10.% longer cost it no output: what limits this line is not their work, so that no count tells of it\. Time the stations in the trial, too\.$/,
  )
  const near = { ...madeUpTrials(), slower: madeUpTrials().healthy.map(([half, whole]) => [half!, whole! - 9]) }
  const hard = { ...section, trialsMost: 1, miss: 0, falseAlarm: 0.01, longer: 0.06 }
  const wide = { ...near, healthy: near.healthy.map(([half, whole], trial) => [half!, whole! - (trial % 2) * 8]) }
  expect(acceptanceStory(scenario!, 'loop', hard, acceptanceOf(hard, wide)).answer.sentences[1]).toMatch(/Make the trial longer\.$/)
  expect(answer.figures![0]).toMatchObject({ label: 'A test that tells', value: 'none' })
})

test('a line that makes nothing has nothing to accept', () => {
  const none = { ...madeUpTrials(), healthy: madeUpTrials().healthy.map(() => [0, 0]) }
  expect(() => acceptanceOf(section, none)).toThrow('the line makes nothing in a trial')
})
