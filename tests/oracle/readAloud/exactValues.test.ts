/**
 * Random loops with exactly known output, in short windows.
 *
 * Each test compares the mean of 20 replications with the known value: it fails if they differ by more than 3.883 standard errors,
 * Student's t with 19 degrees of freedom, so with a probability of 0.001 when all is well (t table, 0.9995 quantile, from memory); the seed is fixed.
 * Windows are as long as it takes for standard errors below 1 % of the value, which is asked of each, so that an error of 6 % or more is found almost surely;
 * what is finer is found by the engines, which run longer (tests/oracle/exactValues.test.ts) and agree with this one to the last bit (agreement.test.ts).
 */

import type { Distribution } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { geometric } from '../exact/exactTime.ts'
import { readAloud } from './readAloud.ts'
import { type SwapLoop, swapLoop } from './swapLoop.ts'

const T_19 = 3.883

function expectOutputPerSecond(model: SwapLoop, value: number, warmupSeconds: number, windowSeconds: number): void {
  const spec = swapLoop(model, warmupSeconds, windowSeconds)
  const rates = Array.from({ length: 20 }, (_, replication) => readAloud(spec, 'exact', replication).result.output / windowSeconds)
  const mean = rates.reduce((a, b) => a + b, 0) / 20
  const error = Math.sqrt(rates.reduce((sum, x) => sum + (x - mean) ** 2, 0) / 19 / 20)
  expect(error).toBeLessThan(0.01 * value)
  expect(Math.abs(mean - value), `mean ${mean}, value ${value}, standard error ${error}`).toBeLessThan(T_19 * error)
  // seen to fail: 6 % beside the value
  expect(Math.abs(mean - value * 1.06)).toBeGreaterThan(T_19 * error)
}

const exponential = (mean: number): Distribution => ({ kind: 'exponential', mean })

// Output = N(Z − N) / (Z(Z − 1)): F. Spitzer, Adv. Math. 5 (1970) 246–290 (from memory); uniform measure stated in S. Janowsky & J. Lebowitz, comp-gas/9306003 (1993).
test.each([
  { carriers: 2, value: (2 * 4) / (6 * 5) },
  { carriers: 5, value: (5 * 1) / (6 * 5) },
])('exclusion ring of 6 zones, $carriers carriers', ({ carriers, value }) => {
  const model: SwapLoop = { zones: 6, carriers, start: 'spread', tasks: [], moveSeconds: exponential(1), clearSeconds: 'move' }
  expectOutputPerSecond(model, value, 100, 750)
})

// Parallel update on a ring: M. Schreckenberg, A. Schadschneider, K. Nagel, N. Ito, Phys. Rev. E 51 (1995) 2939; values by the full transition matrix.
test.each([
  { p: 0.5, carriers: 2, value: 0.1458333333333, seconds: 1000 },
  { p: 0.25, carriers: 3, value: 0.07934782608696, seconds: 2000 },
])('step ring of 6 zones, p $p, $carriers carriers', ({ p, carriers, value, seconds }) => {
  const model: SwapLoop = { zones: 6, carriers, start: 'spread', tasks: [], moveSeconds: geometric(p), clearSeconds: 'move' }
  expectOutputPerSecond(model, value, 200, seconds)
})

// Own finite Markov chain on the whole seconds, made apart from this project.
test.each([
  { moves: 1, clears: 1, carriers: 4, b: [2, 6], value: 0.1558441558442 },
  { moves: 2, clears: 3, carriers: 2, b: [3, 4, 4, 8], value: 0.08978955572876 },
])('whole times, moves $moves s, clears $clears s, $carriers carriers', ({ moves, clears, carriers, b, value }) => {
  const work = (values: number[]): Distribution => ({ kind: 'empirical', values, interpolate: false })
  const model: SwapLoop = {
    zones: 6,
    carriers,
    start: 'spread',
    tasks: [
      { zone: 0, time: work([2, 6]) },
      { zone: 3, time: work(b) },
    ],
    moveSeconds: moves,
    clearSeconds: clears,
  }
  expectOutputPerSecond(model, value, 200, 375)
})

// L = min(N, b₁ + 2) − max(0, N − b₂ − 2); equal rates: L / (L + 1). A birth-death chain; G. Hunt, Oper. Res. 4 (1956) 674–683 for the open line (from memory).
test.each([
  { zones: 4, at: 2, carriers: 2, value: 2 / 3, seconds: 1000 },
  { zones: 6, at: 3, carriers: 4, value: 4 / 5, seconds: 500 },
])('two exponential stations in $zones zones, $carriers carriers, moves of 0 s', ({ zones, at, carriers, value, seconds }) => {
  const model: SwapLoop = {
    zones,
    carriers,
    start: 'spread',
    tasks: [
      { zone: 0, time: exponential(1) },
      { zone: at, time: exponential(1) },
    ],
    moveSeconds: 0,
    clearSeconds: 0,
  }
  expectOutputPerSecond(model, value, 50, seconds)
})
