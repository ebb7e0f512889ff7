import { binomialEstimate, chanceVerdict, outputInterval, quantileEstimate, windowInterval } from '@loopwright/stats'
import { planAnswer, type SweepCount, sweepAnswer } from '@loopwright/study'
import { expect, test } from 'vitest'
import { answerSentences, oneCountSentences, outputSentence, sureSentences, type AnsweredSweep } from './answerWords.ts'
import type { Period } from './period.ts'

const SHIFT: Period = { one: 'shift', each: 'a shift', many: 'shifts', plan: 320, line: 'loop', named: 'the late shift' }
const plain = (texts: readonly string[]): string[] => texts.map((text) => text.replaceAll('\u202f', ' '))
const NO_PLAN: Period = { ...SHIFT, plan: null }

/** What is known of one count from its outputs alone; the words look at nothing else. */
function count(carriers: number, units: readonly number[], gridlocks = 0): SweepCount {
  const met = units.filter((made) => made >= 320).length
  return {
    carriers,
    units,
    gridlocks,
    replications: units.length,
    mean: outputInterval(units),
    controlled: null,
    p10: quantileEstimate(units, 0.1),
    p50: quantileEstimate(units, 0.5),
    p90: quantileEstimate(units, 0.9),
    singleShift: windowInterval(units),
    meetsPlan: binomialEstimate(met, units.length),
    planVerdict: chanceVerdict(met, units.length),
    moving: null,
  } as Partial<SweepCount> as SweepCount
}

/** @param reference  where the walk begins; the largest count unless told */
function told(counts: readonly SweepCount[], reference = counts.at(-1)!.carriers): AnsweredSweep {
  return { counts, answer: sweepAnswer(counts, reference), planAnswer: planAnswer(counts), chance: true }
}

/** `high` outputs of 330 and the rest of 310, in turn as far as they go */
const mixed = (of: number, high: number, lift = 0): number[] => Array.from({ length: of }, (_, index) => (index < high ? 330 : 310) + lift)

/** By hand: D = Y₉ − 0.99·Y₁₁ has mean −6.74 and sd 4.37, so its one-sided limit is −6.74 − 1.660·0.437 = −7.5; a hundredth of Y₁₁ is 3.3. */
test('no count meets the plan: said first, with the best chance; then the count that is enough, and one fewer', () => {
  const counts = [count(9, mixed(100, 70, -8)), count(10, mixed(100, 73)), count(11, mixed(100, 75, 1))]
  expect(plain(answerSentences(told(counts), SHIFT))).toEqual([
    'No count tried meets the plan of 320 in nine of ten shifts; the best chance is with 11 carriers (75 %, 65 to 83). `loopwright drivers` says what would help most.',
    '10 carriers are enough for nearly the best output: 325 units a shift on average, within 1 % of the best count tried (11), with 95 % confidence; nine of ten shifts make at least 310.',
    '9 carriers fall short of the best by more than 1 %: by up to 11 units a shift.',
  ])
})

test('a count that meets the plan comes first, with its neighbours; then the count that is enough', () => {
  const counts = [count(9, mixed(200, 100)), count(10, mixed(200, 195)), count(11, mixed(200, 198))]
  const sentences = plain(answerSentences(told(counts), SHIFT))
  expect(sentences[0]).toBe(
    '10 carriers meet the plan of 320 in more than nine of ten shifts (98 %, 94 to 99). With 11 it is met in 99 %, with 9 it is met in 50 %.',
  )
  expect(sentences[1]).toMatch(
    /^The same count is enough for nearly the best output: 330 units a shift on average, within 1 % of the best count tried \(11\)/,
  )
})

test('a chance that lies about nine of ten and is known well is called that', () => {
  const counts = [count(10, mixed(1000, 890)), count(11, mixed(1000, 893))]
  expect(plain(answerSentences(told(counts), SHIFT))[0]).toMatch(
    /^10 carriers meet the plan of 320 in about nine of ten shifts \(89 %, 87 to 91\)\. With 11 it is met in 89 %\.$/,
  )
})

test('a chance that the runs leave open is neither called met nor not met', () => {
  const counts = [count(10, mixed(100, 70)), count(11, mixed(100, 92))]
  expect(plain(answerSentences(told(counts), SHIFT))[0]).toBe(
    'No count is shown yet to meet the plan of 320 in nine of ten shifts. With 11 carriers it was met in 92 of 100 simulated; the chance is between 85 % and 96 %. `loopwright carriers` runs as many as it takes.',
  )
})

test('where no count meets the plan even once none is said to come nearest', () => {
  const counts = [count(9, mixed(100, 0)), count(10, mixed(100, 0, 5))]
  const [first] = answerSentences(told(counts), SHIFT)
  expect(first).toMatch(
    /^No count tried meets the plan of 320 in any of the shifts simulated\. The most is made with 10 carriers: 315 units/,
  )
})

test('a count that stood still in some runs is told as that, not as a mean of both', () => {
  const stood = {
    ...count(10, mixed(40, 5)),
    gridlocks: 35,
    moving: { replications: 5, mean: outputInterval([328, 330, 332, 330, 330]), low: 328, high: 332 },
  }
  expect(plain(oneCountSentences(stood as SweepCount, NO_PLAN))).toEqual([
    'With 10 carriers the loop stood still for good (gridlock) in 35 of 40 runs; the other 5 made 330 units a shift on average.',
  ])
})

/** By hand: D = Y₉ − 0.99·330 is −6.7 or 9.3, mean 1.3, sd 8.21; its lower limit is 1.3 − 1.729·1.835 = −1.9, its upper one above 0; −1.9 and a hundredth of 330. */
test('a count that may or may not fall short is not called short', () => {
  const nine = Array.from({ length: 20 }, (_, index) => (index % 2 === 0 ? 320 : 336))
  const ten = nine.map(() => 330)
  const sentences = plain(answerSentences(told([count(9, nine), count(10, ten)]), NO_PLAN))
  expect(sentences.at(-1)).toBe('9 carriers may fall short of the best by more than 1 %: by up to 5.2 units a shift.')
})

test('without a plan nothing is said of one; a single count is told alone', () => {
  expect(answerSentences(told([count(10, mixed(100, 83))]), NO_PLAN)).toEqual([
    'With 10 carriers the loop makes 327 units a shift on average; nine of ten shifts make at least 310.',
  ])
})

test('an open line is not called a loop; one carrier is one', () => {
  expect(outputSentence(count(1, mixed(100, 83)), { ...SHIFT, line: 'open line' })).toMatch(/^With 1 carrier the open line makes/)
})

test('the smallest count tried may hide a smaller one', () => {
  const sentences = answerSentences(told([count(9, mixed(100, 90)), count(10, mixed(100, 90))]), NO_PLAN)
  expect(plain(sentences)).toEqual([
    '9 carriers are enough for nearly the best output: 328 units a shift on average, the most of all counts tried; nine of ten shifts make at least 328.',
    '9 is also the smallest count tried: fewer may do as well.',
  ])
})

test('a count that stood still is not recommended', () => {
  const sentences = answerSentences(told([count(17, mixed(100, 90), 3), count(18, mixed(100, 90, 1))]), NO_PLAN)
  expect(sentences.at(-1)).toBe('17 carriers are not recommended: the loop stood still in some runs (gridlock).')
})

test('no answer without two replications, and none where no count is confirmed', () => {
  expect(answerSentences({ answer: null, counts: [], planAnswer: null, chance: true }, SHIFT)).toEqual([
    'No answer yet: every count needs at least 2 simulated shifts, and some have fewer.',
  ])
  const still = [count(16, mixed(100, 90)), count(17, mixed(100, 90), 3)]
  expect(answerSentences(told(still), NO_PLAN)).toEqual([
    'No count is recommended: with 17 carriers, where the search began, the line stood still in some runs (gridlock).',
  ])
  const nothing = [count(1, [0, 0, 0]), count(2, [0, 0, 0])]
  expect(answerSentences(told(nothing), SHIFT)).toEqual(['No count tried makes anything.'])
  const unsure = [count(9, [300, 340, 300, 340]), count(10, [340, 300, 340, 300])]
  expect(plain(answerSentences(told(unsure), NO_PLAN))).toEqual([
    'These runs do not settle which count comes within 1 % of the best. `loopwright carriers` runs as many as it takes.',
  ])
})

test('a line without chance is told as one number, and why', () => {
  expect(answerSentences(told([count(10, [330, 330, 330])]), NO_PLAN)).toEqual([
    'With 10 carriers the loop makes 330 units a shift, the same in every shift simulated.',
  ])
  expect(sureSentences({ ...told([count(10, [330, 330, 330])]), chance: false }, 10, SHIFT)).toEqual([
    'No time, stop or mix of this loop is left to chance: one run tells all, and there are no intervals.',
  ])
})

test('what more replications narrow, and what they do not; from how many', () => {
  expect(plain(sureSentences(told([count(10, mixed(100, 50))]), 10, SHIFT))).toEqual([
    'Average output per shift: 320, known to ± 2 (95 %) from 100 shifts. More simulated shifts narrow this.',
    'A single shift: 310 to 330 in 95 of 100. More of them do not narrow this; it is how much shifts differ.',
  ])
  expect(sureSentences(told([count(10, mixed(4, 2))]), 10, SHIFT)[0]).toMatch(
    /With 4 the interval is rough, and what is rare may not be among them: 30 are usual\.$/,
  )
})
