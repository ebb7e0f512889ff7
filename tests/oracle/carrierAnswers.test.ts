/** How often studies are wrong, on loops whose output is exactly known. */
import { chooseCarriers } from '@loopwright/study'
import { describe, expect, test } from 'vitest'
import { tooOften } from '../helpers/tooOften.ts'
import { exponentialRing, exponentialRingRate } from './exact/exponentialRing.ts'

describe('the number of carriers', () => {
  /**
   * By how many studies the check knows is left to what they say: 30 to 100. Against 200 of them, 28 wrong ones being too many, it finds a study that is wrong in
   * 10, 12, 15 or 20 of a hundred with a chance of 0.07, 0.49, 0.89 and 0.99 instead of 0.04, 0.22, 0.68 and 0.99 (exact sums, as in tooOften.test.ts).
   */
  const RATES = { promised: 0.05, found: 0.2, falseAlarm: 1e-6, missed: 0.01 }
  const between = 3
  /** 5 carriers are the best, and 4 just too few */
  const within = 1 - exponentialRingRate(between, 4) / exponentialRingRate(between, 5) - 0.001
  const isWrong =
    (level: number) =>
    async (study: number): Promise<boolean> => {
      const request = { counts: [3, 4, 5, 6], within, level, replicationsMax: 40 }
      const { answer } = await chooseCarriers(exponentialRing(between, 5, 20, 20), request, { seed: `answers ${study}`, workers: 0 })
      return answer?.chosen != null && answer.chosen < 5
    }

  test('one fewer lies a thousandth below the border: a study that promises 95 of 100 names it, or fewer, in at most 5 of 100', async () => {
    expect([3, 4, 5, 6, 7].map((carriers) => exponentialRingRate(between, carriers))).toEqual([3 / 4, 4 / 5, 5 / 6, 4 / 5, 3 / 4])
    expect(await tooOften(isWrong(0.95), RATES)).toBe(false)
  })

  test('one that promises one of a hundred is wrong more often: the check sees it', async () => {
    // one of five is wrong, so that fewer will do
    expect(await tooOften(isWrong(0.01), RATES)).toBe(true)
  })
})
