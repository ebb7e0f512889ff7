/**
 * How often intervals cover, on a loop whose output is exactly known.
 *
 * Two exponential stations of mean 1 s in a ring of zones without move times, b zones between them on either way: a birth and death chain with L + 1 states of
 * equal chance, L = min(N, b + 2) − max(0, N − b − 2), so X(N) = L/(L + 1) products a second (own derivation, as in exact/ring-two-stations.json; the open case:
 * G. Hunt, Sequential arrays of waiting lines, Operations Research 4 (1956), from memory).
 */
import type { LineSpec } from '@loopwright/line'
import { meanInterval } from '@loopwright/stats'
import { binomialCdf } from '@loopwright/stats/special'
import { replicate } from '@loopwright/study'
import { describe, expect, test } from 'vitest'
import { smallLoop } from '../helpers/smallLoop.ts'

/** of each statistical check below: chance that it fails with everything right */
const FALSE_ALARM = 1e-6

const exponential = { kind: 'exponential', mean: 1 } as const

/** Ring with `between` zones from either station to the other. */
function ring(between: number, carriers: number, windowSeconds: number): LineSpec {
  const stations = [
    { at: 0, unload: true as const, load: true as const, work: exponential },
    { at: between + 1, work: exponential },
  ]
  return smallLoop({
    zones: 2 * between + 2,
    start: carriers,
    odd: true,
    move: 0,
    clear: 0,
    stations,
    warmup: 40,
    until: 40 + windowSeconds,
  })
}

/** Products a second with N carriers. */
function exactRate(between: number, carriers: number): number {
  const states = Math.min(carriers, between + 2) - Math.max(0, carriers - between - 2)
  return states / (states + 1)
}

describe('95 % intervals of the mean', () => {
  const STUDIES = 400
  const window = 60
  const exact = exactRate(2, 4) * window
  const covered = async (level: number): Promise<number> => {
    const runs = await replicate(ring(2, 4, window), { replications: 10 * STUDIES }, { seed: 'coverage', workers: 0 })
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
