/**
 * How often studies are wrong, on loops whose output is exactly known.
 *
 * Two exponential stations of mean 1 s in a ring of zones without move times, b zones between them on either way: a birth and death chain with L + 1 states of
 * equal chance, L = min(N, b + 2) − max(0, N − b − 2), so X(N) = L/(L + 1) products a second (own derivation, as in exact/ring-two-stations.json; the open case:
 * G. Hunt, Sequential arrays of waiting lines, Operations Research 4 (1956), from memory).
 */
import type { LineSpec } from '@loopwright/line'
import { binomialCdf } from '@loopwright/stats/special'
import { chooseCarriers } from '@loopwright/study'
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
    warmup: 20,
    until: 20 + windowSeconds,
  })
}

/** Products a second with N carriers. */
function exactRate(between: number, carriers: number): number {
  const states = Math.min(carriers, between + 2) - Math.max(0, carriers - between - 2)
  return states / (states + 1)
}

describe('the number of carriers', () => {
  const STUDIES = 200
  const SEEN = 120
  const between = 3
  /** 5 carriers are the best, and 4 just too few */
  const within = 1 - exactRate(between, 4) / exactRate(between, 5) - 0.001
  const wrong = async (level: number, studies: number): Promise<number> => {
    const line = ring(between, 5, 20)
    let count = 0
    for (let study = 0; study < studies; study += 1) {
      const request = { counts: [3, 4, 5, 6], within, level, replicationsMax: 40 }
      const { answer } = await chooseCarriers(line, request, { seed: `answers ${study}`, workers: 0 })
      if (answer?.chosen != null && answer.chosen < 5) count += 1
    }
    return count
  }

  test('one fewer lies a thousandth below the border: a study that promises 95 of 100 names it, or fewer, in at most 5 of 100', async () => {
    expect([3, 4, 5, 6, 7].map((carriers) => exactRate(between, carriers))).toEqual([3 / 4, 4 / 5, 5 / 6, 4 / 5, 3 / 4])
    expect(1 - binomialCdf((await wrong(0.95, STUDIES)) - 1, STUDIES, 0.05)).toBeGreaterThan(FALSE_ALARM)
  })

  test('one that promises one of a hundred is wrong more often: the check sees it', async () => {
    // one of five is wrong, so that fewer will do
    expect(1 - binomialCdf((await wrong(0.01, SEEN)) - 1, SEEN, 0.05)).toBeLessThan(FALSE_ALARM)
  })
})
