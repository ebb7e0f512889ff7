import { describe, expect, test } from 'vitest'
import { type Candidate, pilotBest, sweepAnswer } from './sweepAnswer.ts'

const candidate = (carriers: number, units: number[], gridlocks = 0): Candidate => ({ carriers, units, gridlocks })

describe('the smallest count within 1 % of the best', () => {
  test('by hand: three counts, four replications', () => {
    const best = [100, 102, 98, 100]
    const near = [99.5, 101.5, 97.5, 99.5]
    const far = [95, 97, 93, 95]
    const answer = sweepAnswer([candidate(5, far), candidate(6, near), candidate(7, best)], 7)!
    expect(answer).toMatchObject({ reference: 7, best: 7, chosen: 6, bestAtUpperEnd: true, chosenAtLowerEnd: false, replications: 4 })
    // D = far − 0.99·best = −4, −3.98, −4.02, −4: mean −4, sd 0.016330, t(0.95, 3) = 2.353363 (tables of Student's t): limit −4 − 2.353363·0.016330/2.
    expect(answer.notConfirmed).toMatchObject({ carriers: 5, reason: 'may fall short', against: 7, shown: true })
    expect(answer.notConfirmed?.lowerLimit).toBeCloseTo(-4.019215, 5)
    expect(answer.notConfirmed?.shortBy).toBeCloseTo(4.019215, 5)
  })

  test('the reference is tested too, and against every other count', () => {
    const counts = [candidate(5, [90, 91, 89, 90]), candidate(6, [100, 101, 99, 100]), candidate(7, [104, 105, 103, 104])]
    const answer = sweepAnswer(counts, 6)!
    expect(answer).toMatchObject({ reference: 6, best: 7, chosen: null })
    expect(answer.notConfirmed).toMatchObject({ carriers: 6, against: 7, shown: false })
  })

  test('a count between not confirmed and shown to fall short is neither', () => {
    const answer = sweepAnswer([candidate(5, [98, 100, 98, 100]), candidate(6, [100, 100, 100, 100])], 6)!
    expect(answer.notConfirmed).toMatchObject({ carriers: 5, reason: 'may fall short', shown: false })
  })

  test('the first that fails ends the walk, though a smaller one would pass', () => {
    const answer = sweepAnswer([candidate(3, [100, 100, 100]), candidate(4, [90, 90, 90]), candidate(5, [100, 100, 100.1])], 5)!
    expect(answer).toMatchObject({ best: 5, chosen: 5 })
    expect(answer.notConfirmed?.carriers).toBe(4)
  })

  test('equal means: the smaller count is the best', () => {
    const counts = [candidate(4, [90, 90]), candidate(5, [100, 100]), candidate(6, [100, 100])]
    expect(pilotBest(counts)).toBe(5)
    expect(sweepAnswer(counts, 5)).toMatchObject({ best: 5, chosen: 5 })
  })

  test('no spread at all: the mean itself decides, on the border it passes', () => {
    expect(sweepAnswer([candidate(4, [99, 99]), candidate(5, [100, 100])], 5)).toMatchObject({
      chosen: 4,
      chosenAtLowerEnd: true,
      notConfirmed: null,
    })
    expect(sweepAnswer([candidate(4, [98.9, 98.9]), candidate(5, [100, 100])], 5)).toMatchObject({ chosen: 5 })
    expect(sweepAnswer([candidate(4, [98.9, 98.9]), candidate(5, [100, 100])], 5, { within: 0.02 })).toMatchObject({ chosen: 4 })
  })

  test('a smaller chance of error confirms less', () => {
    const counts = [candidate(4, [99.5, 100.5, 99.5, 100.5]), candidate(5, [100, 100, 100, 100])]
    expect(sweepAnswer(counts, 5, { alpha: 0.05 })?.chosen).toBe(4)
    expect(sweepAnswer(counts, 5, { alpha: 0.001 })?.chosen).toBeNull()
  })

  test('a count that stood still is never confirmed, whatever it made, and is no reference', () => {
    const counts = [candidate(4, [100, 100], 1), candidate(5, [100.1, 100.1])]
    const answer = sweepAnswer(counts, 5)!
    expect(answer.chosen).toBe(5)
    expect(answer.notConfirmed).toMatchObject({ carriers: 4, reason: 'gridlock', shortBy: 0 })
    expect(sweepAnswer([candidate(5, [100, 100], 1)], 5)).toMatchObject({ best: 5, chosen: null })
    expect(pilotBest([candidate(4, [90, 90]), candidate(5, [100, 100], 1)])).toBe(4)
    expect(pilotBest([candidate(4, [90, 90], 2), candidate(5, [100, 100], 1)])).toBe(5)
  })

  test('nothing made at all: no answer', () => {
    expect(sweepAnswer([candidate(4, [0, 0]), candidate(5, [0, 0])], 4)).toMatchObject({ chosen: null, notConfirmed: null })
    expect(sweepAnswer([candidate(4, [0, 0])], 4)).toMatchObject({ chosen: null, notConfirmed: null })
  })

  test('counts with more replications than others are compared on those that all have', () => {
    const answer = sweepAnswer([candidate(4, [100, 100]), candidate(5, [100, 100, 500])], 4)!
    expect(answer).toMatchObject({ best: 4, chosen: 4, replications: 2 })
  })

  test('fewer than 2 replications: no answer', () => {
    expect(sweepAnswer([candidate(4, [100]), candidate(5, [100, 101])], 5)).toBeNull()
    expect(sweepAnswer([], 5)).toBeNull()
  })
})
