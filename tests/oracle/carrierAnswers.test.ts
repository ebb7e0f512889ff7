/** How often studies are wrong, on loops whose output is exactly known. */
import { binomialCdf } from '@loopwright/stats/special'
import { chooseCarriers } from '@loopwright/study'
import { describe, expect, test } from 'vitest'
import { exponentialRing, exponentialRingRate } from './exact/exponentialRing.ts'

/** of each statistical check below: chance that it fails with everything right */
const FALSE_ALARM = 1e-6

describe('the number of carriers', () => {
  const STUDIES = 200
  const SEEN = 120
  const between = 3
  /** 5 carriers are the best, and 4 just too few */
  const within = 1 - exponentialRingRate(between, 4) / exponentialRingRate(between, 5) - 0.001
  const wrong = async (level: number, studies: number): Promise<number> => {
    const line = exponentialRing(between, 5, 20, 20)
    let count = 0
    for (let study = 0; study < studies; study += 1) {
      const request = { counts: [3, 4, 5, 6], within, level, replicationsMax: 40 }
      const { answer } = await chooseCarriers(line, request, { seed: `answers ${study}`, workers: 0 })
      if (answer?.chosen != null && answer.chosen < 5) count += 1
    }
    return count
  }

  test('one fewer lies a thousandth below the border: a study that promises 95 of 100 names it, or fewer, in at most 5 of 100', async () => {
    expect([3, 4, 5, 6, 7].map((carriers) => exponentialRingRate(between, carriers))).toEqual([3 / 4, 4 / 5, 5 / 6, 4 / 5, 3 / 4])
    expect(1 - binomialCdf((await wrong(0.95, STUDIES)) - 1, STUDIES, 0.05)).toBeGreaterThan(FALSE_ALARM)
  })

  test('one that promises one of a hundred is wrong more often: the check sees it', async () => {
    // one of five is wrong, so that fewer will do
    expect(1 - binomialCdf((await wrong(0.01, SEEN)) - 1, SEEN, 0.05)).toBeLessThan(FALSE_ALARM)
  })
})
