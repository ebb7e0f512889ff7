import { inputDoubt } from '@loopwright/study'
import { stream } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { TOLD_TWICE, toldTwice } from '../../../../tests/helpers/toldTwice.ts'
import { doubtOf, doubtStory } from './doubtStory.ts'

const inputs = [
  { name: 'wire', n: 20, what: 'time' },
  { name: 'S3 tool', n: 3, what: 'repair' },
] as const

test('twenty more of twenty halve the variance of their part', () => {
  const [first, second] = doubtOf({ variances: [9, 16], split: { inputVariance: 25 }, draws: 1_000_000 }, inputs)
  expect([first!.name, first!.share]).toEqual(['S3 tool', 0.64])
  // 1.6449·5; 25 − 16·20/23 left; of the other 25 − 9·20/40
  expect([first!.now, first!.narrowed, second!.narrowed].map((one) => Number(one.toFixed(3)))).toEqual([8.224, 5.477, 7.447])
  expect(doubtOf({ variances: [], split: null, draws: 0 }, inputs)).toEqual([])
})

test('told in the terminal and on the page, with and without what is known', async () => {
  const scenario = testLine()
  const uniform = stream('doubt', 0, 'x')
  const draws = Array.from({ length: 6 }, () => ({ line: scenario.line, levels: [uniform(), uniform()] }))
  const story = doubtStory(scenario, await inputDoubt(scenario.line, draws, {}, { seed: '1', workers: 0 }), inputs)
  expect(toldTwice(story.cells)).toEqual(TOLD_TWICE)
  expect(story.answer.sentences[0]).toMatch(/^A \w+ makes \d+ to \d+ units in eight of ten/)
  expect(story.warnings.map(({ id }) => id)).toEqual(['warning-doubt-few'])
  const stopped = doubtStory(
    scenario,
    await inputDoubt(scenario.line, draws, {}, { seed: '1', workers: 0, signal: AbortSignal.abort() }),
    inputs,
  )
  expect([stopped.inputs, stopped.answer.sentences]).toEqual([null, ['Too little was simulated to tell what the data do not know.']])
})
