import { expect, test } from 'vitest'
import { smallLoop } from '../../../../tests/helpers/smallLoop.ts'
import { CARRIER_STATES, STATION_STATES, ZONE_STATES } from './result.ts'
import { simulate } from '../simulate.ts'
import { total } from '../../../../tests/helpers/spent.ts'

test('a result is plain data: it survives JSON', () => {
  const spec = smallLoop({
    zones: 5,
    start: 2,
    stations: [{ at: 1, unload: true, load: 3, release: 1 }],
    stops: [{ name: 'wear', on: { kind: 'station', index: 0 }, after: [5, 50], repair: 2 }],
    breaks: [[20, 5]],
    until: 3600,
  })
  const result = simulate(spec, { seed: 'a', replication: 4 })
  expect(JSON.parse(JSON.stringify(result))).toEqual(result)
  expect([result.seed, result.replication, result.window]).toEqual(['a', 4, { warmupSeconds: 0, endSeconds: 3600 }])
  expect(result.stations.map(({ name, seconds }) => [name, Object.keys(seconds)])).toEqual([['S1', [...STATION_STATES]]])
  expect(result.zones.map(({ name, seconds }) => [name, Object.keys(seconds)])).toEqual(
    ['Z0', 'Z1', 'Z2', 'Z3', 'Z4'].map((z) => [z, [...ZONE_STATES]]),
  )
  expect(result.carriers.map(({ seconds }) => Object.keys(seconds))).toEqual([[...CARRIER_STATES], [...CARRIER_STATES]])
})

test('mean, spread and extremes of what was counted', () => {
  // two zones, move 5, clear 5; load times 1, 2, 6 in turn. Product k stays from its load's start to its return: load + 10
  const spec = smallLoop({
    zones: 2,
    start: [1],
    move: 5,
    clear: 5,
    stations: [{ at: 0, unload: true, load: { kind: 'replay', values: [1, 2, 6] } }],
    until: 44,
  })
  const { timeInLine } = simulate(spec, { seed: 'a', replication: 0 })
  // loads at 5, 16, 28, 44: times in line 11, 12, 16: mean 13, sd √((4 + 1 + 9)/2)
  expect(timeInLine).toEqual({ count: 3, mean: 13, sd: Math.sqrt(7), min: 11, max: 16 })
})

test('the window is told on the clock grid', () => {
  const spec = smallLoop({ zones: 2, start: [0], warmup: 0.1, until: 10.3 })
  const result = simulate(spec, { seed: 'a', replication: 0 })
  expect(result.window).toEqual({ warmupSeconds: 104858 / 2 ** 20, endSeconds: Math.floor(10.3 * 2 ** 20 + 0.5) / 2 ** 20 })
  expect(total(result.zones[0]!.seconds)).toBe(result.window.endSeconds - result.window.warmupSeconds)
})
