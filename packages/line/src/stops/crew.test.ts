/** Timelines of repair crews, worked out by hand from MODEL.md §7. */
import { describe, expect, test } from 'vitest'
import { type StopWish, smallLoop, tell, timeline, type Wish } from '../../../../tests/helpers/smallLoop.ts'
import { simulate } from '../simulate.ts'

const words = (wish: Wish, repairCrews: number | null): string[] =>
  timeline({ ...smallLoop(wish), repairCrews }).filter((line) => / (stop|repair|repaired) /.test(line))

const stop = (name: string, station: number, after: number | readonly number[], repair: number): StopWish => ({
  name,
  on: { kind: 'station', index: station },
  clock: 'calendar',
  after,
  repair,
})
const LOOP: Wish = {
  zones: 6,
  start: [0],
  move: 4,
  clear: 3,
  stations: [
    { at: 1, load: 1 },
    { at: 3, work: 1 },
    { at: 5, unload: 1 },
  ],
  until: 60,
}

describe('one crew', () => {
  test('the earliest failure first; the part is down while it waits', () => {
    // c fails at 5 (10 s), b at 8, a at 9 (10 s each): c 5–15, b 15–25, a 25–35
    const wish = { ...LOOP, stops: [stop('a', 0, 9, 10), stop('b', 1, 8, 10), stop('c', 2, 5, 10)] }
    expect(words(wish, 1)).toEqual([
      '5 stop c',
      '5 repair of c begins',
      '8 stop b',
      '9 stop a',
      '15 repaired c',
      '15 repair of b begins',
      '25 repaired b',
      '25 repair of a begins',
      '35 repaired a',
    ])
    expect(tell({ ...smallLoop(wish), repairCrews: 1 }).result.breakdowns.map(({ seconds }) => seconds)).toEqual([26, 17, 10])
  })

  test('of failures at one instant the lower index first, after all stops that end or begin then', () => {
    // a fails again at 15, when c ends; b has waited since 15 too: a (index) before b
    const wish = { ...LOOP, stops: [stop('a', 0, 15, 5), stop('b', 1, 15, 5), stop('c', 2, 5, 10)] }
    expect(words(wish, 1)).toEqual([
      '5 stop c',
      '5 repair of c begins',
      '15 stop a',
      '15 stop b',
      '15 repaired c',
      '15 repair of a begins',
      '20 repaired a',
      '20 repair of b begins',
      '25 repaired b',
    ])
  })

  test('works through a break', () => {
    const wish: Wish = { ...LOOP, stops: [stop('a', 0, 5, 10), stop('b', 1, 6, 10)], breaks: [[7, 30]] }
    expect(words(wish, 1)).toContain('25 repaired b')
  })
})

test('two failures on one part are repaired independently, each with a crew of its own', () => {
  const wish = { ...LOOP, stops: [stop('wear', 0, 5, 10), stop('jam', 0, 6, 2), stop('b', 1, 7, 5)] }
  expect(words(wish, 2)).toEqual([
    '5 stop wear',
    '5 repair of wear begins',
    '6 stop jam',
    '6 repair of jam begins',
    '7 stop b',
    '8 repaired jam',
    '8 repair of b begins',
    '13 repaired b',
    '15 repaired wear',
  ])
})

test('as many crews as sources are no limit', () => {
  const wish = { ...LOOP, stops: [stop('a', 0, 5, 10), stop('b', 1, 6, 10)] }
  const free = tell(smallLoop(wish)).result
  expect(tell({ ...smallLoop(wish), repairCrews: 2 }).result).toEqual(free)
})

// Machine repair with one repairman: n machines, each fails at rate l while it runs, repairs at rate m; P_k = n!/(n−k)! (l/m)^k P_0 machines down.
// Gross, Shortle, Thompson & Harris, Fundamentals of Queueing Theory, 4th ed. (2008), section 2.7, finite-source queues.
test('mean number of parts down is that of the finite-source queue M/M/1 with 3 machines', () => {
  const [mtbf, mttr, n] = [400, 200, 3]
  const weights = Array.from(
    { length: n + 1 },
    (_, k) => Array.from({ length: k }, (_, j) => n - j).reduce((a, b) => a * b, 1) * (mttr / mtbf) ** k,
  )
  const down = weights.reduce((sum, weight, k) => sum + k * weight, 0) / weights.reduce((a, b) => a + b)
  const stops: StopWish[] = [0, 1, 2].map((index) => ({
    name: `m${index}`,
    on: { kind: 'station', index },
    clock: 'calendar',
    after: { kind: 'exponential', mean: mtbf },
    repair: { kind: 'exponential', mean: mttr },
  }))
  const spec = { ...smallLoop({ ...LOOP, stops, warmup: 10_000, until: 210_000 }), repairCrews: 1 }
  const means = Array.from({ length: 40 }, (_, replication) => {
    const { breakdowns } = simulate(spec, { seed: 'finite source', replication })
    return breakdowns.reduce((sum, { seconds }) => sum + seconds, 0) / 200_000
  })
  const mean = means.reduce((a, b) => a + b) / means.length
  const error = Math.sqrt(means.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (means.length - 1) / means.length)
  // false alarms: |t| > 4 with 39 degrees of freedom in 0.03 % of seeds; this seed is fixed
  expect(Math.abs(mean - down) / error).toBeLessThan(4)
  expect(error / down).toBeLessThan(0.01)
})
