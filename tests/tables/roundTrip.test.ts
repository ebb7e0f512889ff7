import { meanInterval, Tally, tQuantile } from '@loopwright/stats'
import { binomialCdf } from '@loopwright/stats/special'
import { inputDoubt, replicate } from '@loopwright/study'
import { expect, test } from 'vitest'
import { measuredLines, TRUE_LINE } from './roundTrip.ts'

const TRIALS = Number(process.env['ROUND_TRIPS'] ?? 30)
const DRAWS = 24
const TIMES = 20

/**
 * A known line → times as of a clipboard → read, fitted, put into a skeleton → forecast of the mean output. Its 90 % interval, which knows of the doubt of the
 * times, covers the truth about so often (measured: 84 of 100 with 20 times of each task, for the spread of so few is itself known badly); the one that takes
 * them as exact does not (8 of 100). ROUND_TRIPS=500 tries as many.
 */
test('an interval with the doubt of its inputs covers the truth, one without does not', { tags: 'long', timeout: 3_600_000 }, async () => {
  const truth = Tally.of((await replicate(TRUE_LINE, { replications: 400 }, { seed: 'truth', workers: 0 })).map(({ output }) => output))
    .mean!
  let [covered, exactly] = [0, 0]
  for (let trial = 0; trial < TRIALS; trial++) {
    const { line, redrawn } = measuredLines(trial, TIMES, DRAWS)
    const result = await inputDoubt(line, redrawn, { replications: 2 }, { seed: `trip ${trial}`, workers: 0 })
    const plain = meanInterval(result.without, 0.9)
    if (plain.low <= truth && truth <= plain.high) exactly++
    // what the forecast tells: the variance that the inputs add, beside that of the runs
    const half = tQuantile(0.95, DRAWS - 1) * Math.sqrt(result.split!.inputVariance + plain.sd ** 2 / plain.n)
    if (Math.abs(plain.mean - truth) <= half) covered++
  }
  const told = `${covered} of ${TRIALS} with the doubt, ${exactly} without`
  // false alarm: less than 1 in 1000 if nine of ten are covered; and as many without the doubt would be as unlikely if they were right
  expect(binomialCdf(covered, TRIALS, 0.9), told).toBeGreaterThan(0.001)
  expect(binomialCdf(exactly, TRIALS, 0.9), told).toBeLessThan(0.001)
})
