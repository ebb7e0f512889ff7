/** How often intervals cover, on a loop whose output is exactly known. */
import { meanInterval } from '@loopwright/stats'
import { binomialCdf } from '@loopwright/stats/special'
import { replicate } from '@loopwright/study'
import { describe, expect, test } from 'vitest'
import { exponentialRing, exponentialRingRate } from './exact/exponentialRing.ts'

/** of each statistical check below: chance that it fails with everything right */
const FALSE_ALARM = 1e-6

describe('95 % intervals of the mean', () => {
  const STUDIES = 400
  const window = 60
  const exact = exponentialRingRate(2, 4) * window
  const covered = async (level: number): Promise<number> => {
    const runs = await replicate(exponentialRing(2, 4, window, 40), { replications: 10 * STUDIES }, { seed: 'coverage', workers: 0 })
    return Array.from({ length: STUDIES }, (_, study) =>
      meanInterval(
        runs.slice(10 * study, 10 * study + 10).map((run) => run.output),
        level,
      ),
    ).filter(({ low, high }) => low <= exact && exact <= high).length
  }
  /** as likely as not, within the false alarm rate, where each of the studies covers with chance p */
  const inDoubt = (count: number, p: number): boolean =>
    binomialCdf(count, STUDIES, p) > FALSE_ALARM / 2 && 1 - binomialCdf(count - 1, STUDIES, p) > FALSE_ALARM / 2

  test('cover an exactly known throughput in 95 of 100 of 400 studies of ten runs', async () => {
    expect(exact).toBe(48)
    expect(inDoubt(await covered(0.95), 0.95)).toBe(true)
  })

  test('of another level cover otherwise: the check sees it', async () => {
    expect(inDoubt(await covered(0.85), 0.95)).toBe(false)
  })
})
