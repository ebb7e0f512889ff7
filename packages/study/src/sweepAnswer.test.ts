import { describe, expect, test } from 'vitest'
import { type Candidate, sweepAnswer } from './sweepAnswer.ts'

const candidate = (carriers: number, units: number[], gridlocks = 0): Candidate => ({ carriers, units, gridlocks, meetsPlan: null })

describe('the smallest count within 1 % of the best', () => {
  test('by hand: three counts, four replications', () => {
    const best = [100, 102, 98, 100]
    const near = [99.5, 101.5, 97.5, 99.5]
    const far = [95, 97, 93, 95]
    const answer = sweepAnswer([candidate(5, far), candidate(6, near), candidate(7, best)])!
    expect(answer).toMatchObject({ best: 7, chosen: 6, bestAtUpperEnd: true, chosenAtLowerEnd: false, replications: 4 })
    // D = far − 0.99·best = −4, −3.98, −4.02, −4: mean −4, sd 0.016330, t(0.95, 3) = 2.353363 (tables of Student's t): limit −4 − 2.353363·0.016330/2.
    expect(answer.notConfirmed?.carriers).toBe(5)
    expect(answer.notConfirmed?.lowerLimit).toBeCloseTo(-4.019215, 5)
    expect(answer.notConfirmed?.shortBy).toBeCloseTo(4.019215, 5)
  })

  test('the first that fails ends the walk, though a smaller one would pass', () => {
    const answer = sweepAnswer([candidate(3, [100, 100, 100]), candidate(4, [90, 90, 90]), candidate(5, [100, 100, 100.1])])!
    expect(answer).toMatchObject({ best: 5, chosen: 5 })
    expect(answer.notConfirmed?.carriers).toBe(4)
  })

  test('equal means: the smaller count is the best', () => {
    expect(sweepAnswer([candidate(4, [90, 90]), candidate(5, [100, 100]), candidate(6, [100, 100])])).toMatchObject({ best: 5, chosen: 5 })
  })

  test('no spread at all: the mean itself decides, on the border it passes', () => {
    expect(sweepAnswer([candidate(4, [99, 99]), candidate(5, [100, 100])])).toMatchObject({
      chosen: 4,
      chosenAtLowerEnd: true,
      notConfirmed: null,
    })
    expect(sweepAnswer([candidate(4, [98.9, 98.9]), candidate(5, [100, 100])])).toMatchObject({ chosen: 5 })
  })

  test('a count that stood still is never confirmed, whatever it made', () => {
    const answer = sweepAnswer([candidate(4, [100, 100], 1), candidate(5, [100.1, 100.1])])!
    expect(answer.chosen).toBe(5)
    expect(answer.notConfirmed).toMatchObject({ carriers: 4, reason: 'gridlock', shortBy: 0 })
    expect(sweepAnswer([candidate(5, [100, 100], 1)])).toMatchObject({ best: 5, chosen: null })
  })

  test('too noisy for the best itself: no answer', () => {
    const answer = sweepAnswer([candidate(4, [0, 0]), candidate(5, [0, 1000])])!
    expect(answer.chosen).toBeNull()
    expect(answer.notConfirmed).toMatchObject({ carriers: 5, reason: 'may fall short' })
  })

  test('counts with more replications than others are compared on those that all have', () => {
    const answer = sweepAnswer([candidate(4, [100, 100]), candidate(5, [100, 100, 500])])!
    expect(answer).toMatchObject({ best: 4, chosen: 4, replications: 2 })
  })

  test('fewer than 2 replications: no answer', () => {
    expect(sweepAnswer([candidate(4, [100]), candidate(5, [100, 101])])).toBeNull()
    expect(sweepAnswer([])).toBeNull()
  })
})

describe('the plan in nine of ten windows', () => {
  const meets = (carriers: number, share: number, gridlocks = 0) =>
    ({ ...candidate(carriers, [100, 100], gridlocks), meetsPlan: { share } }) as unknown as Candidate

  test('smallest count that does', () => expect(sweepAnswer([meets(4, 0.89), meets(5, 0.9), meets(6, 1)])?.meetsPlanInNineOfTen).toBe(5))
  test('not one that stood still', () => expect(sweepAnswer([meets(4, 0.95, 3), meets(5, 0.9)])?.meetsPlanInNineOfTen).toBe(5))
  test('none', () => expect(sweepAnswer([meets(4, 0.1), meets(5, 0.2)])?.meetsPlanInNineOfTen).toBeNull())
})
