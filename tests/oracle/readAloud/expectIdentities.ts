/** Identities of MODEL.md §11 and of the states of §2, by result and log of one run. */
import type { LineSpec } from '@loopwright/line'
import { expect } from 'vitest'
import { total } from '../../helpers/spent.ts'
import type { ReadAloud } from './readAloud.ts'

const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0)

/** Fails where one does not hold exactly. */
export function expectIdentities(spec: LineSpec, { result, log }: ReadAloud): void {
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
}
