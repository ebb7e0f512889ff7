import { inputDoubt } from '@loopwright/study'
import { stream } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { TOLD_TWICE, toldTwice } from '../../../../tests/helpers/toldTwice.ts'
import { doubtOf, doubtStory } from './doubtStory.ts'

const inputs = [
  { name: 'wire', n: 20, what: 'time', freedom: null },
  { name: 'S3 tool', n: 3, what: 'repair', freedom: null },
] as const

test('twenty more of twenty halve the variance of their part', () => {
  const split = {
    draws: 1_000_000,
    replications: 2,
    grandMean: 0,
    meanSquareBetween: 50,
    meanSquareWithin: 0,
    inputVariance: 25,
    grandMeanVariance: 0,
    inputShare: 1,
  }
  const { interval, share, inputs: parts } = doubtOf({ without: [90, 90], variances: [9, 16], split, chanceVariance: 75 }, inputs)!
  expect(parts.map(({ name, share }) => [name, share])).toEqual([
    ['wire', 0.36],
    ['S3 tool', 0.64],
  ])
  // 1.6449·5 (normal: as many draws are as good as all); 25 − 9·20/40 left; of the other 25 − 16·20/23
  expect([interval.halfWidth, parts[0]!.narrowed, parts[1]!.narrowed].map((one) => Number(one.toFixed(3)))).toEqual([8.224, 7.447, 5.477])
  expect([interval.low, share]).toEqual([expect.closeTo(90 - 8.224, 3), 0.25])
  // by Student's t of 19 degrees of freedom the drawn variance is 19/17 too large; 20 more make it one of 39
  const [wire] = doubtOf({ without: [90, 90], variances: [25], split, chanceVariance: 75 }, [{ ...inputs[0], freedom: 19 }])!.inputs
  expect([wire!.now, wire!.narrowed]).toEqual([
    expect.closeTo(1.729133 * 5 * Math.sqrt(17 / 19), 3),
    expect.closeTo(1.684875 * 5 * Math.sqrt(17 / 19 / 2), 3),
  ])
  // an order more tells of all shares: both parts of the mix shrink together
  const mix = (['mix, a', 'mix, b'] as const).map((name) => ({ name, n: 20, what: 'mix', freedom: null }) as const)
  const shares = doubtOf({ without: [90, 90], variances: [9, 16], split, chanceVariance: 75 }, mix)!.inputs
  expect(shares.map(({ share, narrowed }) => [share, Number(narrowed.toFixed(3))])).toEqual([
    [0.36, 5.815],
    [0.64, 5.815],
  ])
  expect(doubtOf({ without: [], variances: [], split: null, chanceVariance: null }, [])).toBeNull()
})

test('told in the terminal and on the page, with and without what is known', async () => {
  const scenario = testLine()
  const uniform = stream('doubt', 0, 'x')
  const draws = Array.from({ length: 6 }, () => ({ line: scenario.line, levels: [uniform(), uniform()] }))
  const story = doubtStory(scenario, await inputDoubt(scenario.line, { redrawn: draws }, { seed: '1', workers: 0 }), inputs)
  expect(toldTwice(story.cells)).toEqual(TOLD_TWICE)
  expect(story.answer.sentences[0]).toMatch(/^A \w+ makes \d+ to \d+ units in eight of ten/)
  expect(story.warnings.map(({ id }) => id)).toEqual(['warning-doubt-few'])
  const stopped = doubtStory(
    scenario,
    await inputDoubt(scenario.line, { redrawn: draws }, { seed: '1', workers: 0, signal: AbortSignal.abort() }),
    inputs,
  )
  expect([stopped.inputs, stopped.answer.sentences]).toEqual([null, ['Too little was simulated to tell what the data do not know.']])
})
