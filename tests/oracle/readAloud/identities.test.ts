/** Identities of MODEL.md §11 and of the states of §2, on lines made up at random. */
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { randomLine } from './randomLine.ts'
import { readAloud } from './readAloud.ts'
import { total } from '../../helpers/spent.ts'

const LINES = 100
const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0)

test(`${LINES} random lines keep the identities exactly`, () => {
  fc.assert(
    fc.property(randomLine(), fc.nat(9), (spec, replication) => {
      const { result, log } = readAloud(spec, 'identities', replication)
      const window = result.window.endSeconds - result.window.warmupSeconds
      const n = spec.carriers.count
      // each station's, zone's and carrier's seconds sum to the window
      for (const part of [...result.stations, ...result.zones, ...result.carriers]) expect(total(part.seconds)).toBe(window)
      // Σ zone occupancy = N; nobody is in two places
      expect(sum(result.zones.map((zone) => zone.occupancyMean * window))).toBeCloseTo(n * window, 6)
      // from time 0: output ≤ loads ≤ output + N
      const [loads, outputs] = ['load', 'unload'].map((what) => log.filter((entry) => entry.what === what).length)
      expect(outputs).toBeLessThanOrEqual(loads!)
      expect(loads).toBeLessThanOrEqual(outputs! + n)
      // the counts of moves out of any two zones differ by at most N
      const moves = spec.zones.map((_, zone) => log.filter((entry) => entry.what === 'move start' && entry.zone === zone).length)
      expect(Math.max(...moves) - Math.min(...moves)).toBeLessThanOrEqual(n)
      // Little, with the products that are in the line at the ends of the window
      const { warmupSeconds, endSeconds } = result.window
      const inLine = new Map<number, number>()
      let productSeconds = 0
      const clip = (t: number): number => Math.min(Math.max(t, warmupSeconds), endSeconds)
      for (const entry of log) {
        if (entry.what === 'load') inLine.set(entry.serial, entry.t)
        if (entry.what !== 'unload') continue
        productSeconds += clip(entry.t) - clip(inLine.get(entry.serial)!)
        inLine.delete(entry.serial)
      }
      for (const loaded of inLine.values()) productSeconds += endSeconds - clip(loaded)
      expect(result.productsInLineMean).toBe(productSeconds / window)
      // the output by hour is all of the output
      expect(sum(result.outputByHour)).toBe(result.output)
    }),
    { seed: 1, numRuns: LINES },
  )
})

test('the same line twice gives the same log; another replication gives another world', () => {
  const [spec] = fc.sample(
    randomLine().filter((line) => line.breakdowns.some((source) => source.timeToFailureSeconds.kind === 'exponential')),
    { seed: 2, numRuns: 1 },
  )
  const log = (replication: number): string => JSON.stringify(readAloud(spec!, 'twice', replication).log)
  expect(log(0)).toBe(log(0))
  expect(log(1)).not.toBe(log(0))
})
