import { binomialEstimate, meanInterval, predictionInterval, quantileEstimate } from '@loopwright/stats'
import { type SweepCount, sweepAnswer } from '@loopwright/study'
import { expect, test } from 'vitest'
import { answerSentences, planSentence, sureSentences, type Told } from './answerWords.ts'
import type { Period } from './period.ts'

const SHIFT: Period = { one: 'shift', each: 'a shift', many: 'shifts', plan: 320 }
const NO_PLAN: Period = { ...SHIFT, plan: null }

/** What is known of one count from its outputs alone; the words look at nothing else. */
function count(carriers: number, units: readonly number[], gridlocks = 0): SweepCount {
  const { low, high } = predictionInterval(units)
  return {
    carriers,
    units,
    gridlocks,
    replications: units.length,
    mean: meanInterval(units),
    p10: quantileEstimate(units, 0.1),
    p50: quantileEstimate(units, 0.5),
    p90: quantileEstimate(units, 0.9),
    singleShift: { low, high },
    meetsPlan: binomialEstimate(units.filter((made) => made >= 320).length, units.length),
  } as Partial<SweepCount> as SweepCount
}

/** @param reference  where the walk begins; the largest count unless told */
function told(counts: readonly SweepCount[], reference = counts.at(-1)!.carriers): Told {
  return { counts, answer: sweepAnswer(counts, reference) }
}

/** `high` outputs of 330 and the rest of 310, in turn as far as they go */
const mixed = (of: number, high: number, lift = 0): number[] => Array.from({ length: of }, (_, index) => (index < high ? 330 : 310) + lift)

/** By hand: D = Y₉ − 0.99·Y₁₁ has mean −8.72 and sd 7.15, so its one-sided limit is −8.72 − 1.660·0.715 = −9.9. */
test('the answer: what the chosen count makes, the rule, one fewer, the plan in nine of ten', () => {
  const counts = [count(9, mixed(100, 70, -8)), count(10, mixed(100, 83)), count(11, mixed(100, 85, 1))]
  expect(answerSentences(told(counts), SHIFT)).toEqual([
    'With 10 carriers the loop makes 327 units a shift on average; nine of ten shifts make at least 310. The plan of 320 is met in 83 of 100 shifts simulated; the chance is between 74\u202f% and 90\u202f%.',
    '10 is the smallest count whose mean is within 1\u202f% of the best count tried (11), with 95\u202f% confidence. 9 falls short of that border, by up to 9.9 units a shift.',
    'No count tried meets the plan of 320 in nine of ten shifts; 11 comes nearest, with 85 of 100.',
  ])
})

/** By hand: D = Y₉ − 0.99·330 is −6.7 or 9.3, mean 1.3, sd 8.21; its lower limit is 1.3 − 1.729·1.835 = −1.9, its upper one above 0. */
test('a count that may or may not fall short is not called short', () => {
  const nine = Array.from({ length: 20 }, (_, index) => (index % 2 === 0 ? 320 : 336))
  const sentences = answerSentences(
    told([
      count(9, nine),
      count(
        10,
        nine.map(() => 330),
      ),
    ]),
    SHIFT,
  )
  expect(sentences[1]).toMatch(/ 9 is not confirmed: it may fall short of that border by up to 1\.9 units a shift\.$/)
})

test('shifts other than 100 are told as of 100, with what was simulated', () => {
  expect(planSentence(count(10, mixed(200, 166)), SHIFT)).toBe(
    'The plan of 320 is met in 83 of 100 shifts (166 of 200 shifts simulated; the chance is between 77\u202f% and 88\u202f%).',
  )
})

test('all or none are no chance of 1 or 0', () => {
  expect(planSentence(count(10, mixed(100, 100)), SHIFT)).toBe(
    'The plan of 320 is met in all 100 shifts simulated; the chance is at least 96\u202f%.',
  )
  expect(planSentence(count(10, mixed(100, 0)), SHIFT)).toBe(
    'The plan of 320 is met in none of 100 shifts simulated; the chance is at most 4\u202f%.',
  )
})

test('few shifts promise nothing', () => {
  expect(planSentence(count(10, mixed(10, 9)), SHIFT)).toBe(
    'The plan of 320 is met in 9 of 10 shifts simulated: too few to promise anything.',
  )
})

test('without a plan nothing is said of one', () => {
  const sentences = answerSentences(told([count(10, mixed(100, 83))]), NO_PLAN)
  expect(sentences).toEqual([
    'With 10 carriers the loop makes 327 units a shift on average; nine of ten shifts make at least 310.',
    '10 is the only count tried.',
  ])
})

test('a count that meets the plan in nine of ten is named', () => {
  const sentences = answerSentences(told([count(9, mixed(100, 20)), count(10, mixed(100, 95))]), SHIFT)
  expect(sentences.at(-1)).toBe('The smallest count that meets the plan of 320 in nine of ten shifts is 10 too.')
})

test('the smallest count tried may hide a smaller one', () => {
  const sentences = answerSentences(told([count(9, mixed(100, 90)), count(10, mixed(100, 90))]), SHIFT)
  expect(sentences[1]).toBe(
    '9 is the best count tried, and the smallest within 1\u202f% of it with 95\u202f% confidence. It is also the smallest count tried: fewer may do as well.',
  )
})

test('a count that stood still is not recommended', () => {
  const sentences = answerSentences(told([count(17, mixed(100, 90), 3), count(18, mixed(100, 90, 1))]), SHIFT)
  expect(sentences[1]).toMatch(/17 is not recommended: the loop stood still \(gridlock\) in some replications\.$/)
})

test('no answer without two replications, and none where no count is confirmed', () => {
  expect(answerSentences({ answer: null, counts: [] }, SHIFT)).toEqual([
    'No answer yet: every count needs at least 2 replications, and some have fewer.',
  ])
  const still = [count(16, mixed(100, 90)), count(17, mixed(100, 90), 3)]
  expect(answerSentences(told(still), SHIFT)[1]).toBe(
    'No count is recommended: with 17 carriers, where the search began, the loop stood still (gridlock) in some replications.',
  )
  const nothing = [count(1, [0, 0, 0]), count(2, [0, 0, 0])]
  expect(answerSentences(told(nothing), SHIFT)[1]).toBe('No count tried makes anything.')
  const unsure = [count(9, [300, 340, 300, 340]), count(10, [340, 300, 340, 300])]
  expect(answerSentences(told(unsure), SHIFT)[1]).toBe(
    'No count is confirmed yet as within 1\u202f% of every other: run more replications.',
  )
})

test('what more replications narrow, and what they do not', () => {
  expect(sureSentences(told([count(10, mixed(100, 50))]), SHIFT)).toEqual([
    'Average output per shift: 320, known to ± 2 (95\u202f%). More replications narrow this.',
    'A single shift: 300 to 340 in 95 of 100. More replications do not narrow this; it is how much shifts differ.',
  ])
  expect(sureSentences(told([count(10, mixed(4, 2))]), SHIFT)[0]).toMatch(/Few replications: the interval rests on the normal shape\.$/)
  expect(sureSentences(told([count(10, [330, 330, 330])]), SHIFT)).toEqual([
    'Average output per shift: 330 in every replication: nothing random reaches this number.',
  ])
})
