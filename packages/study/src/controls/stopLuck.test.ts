import { type BreakdownSpec, simulate } from '@loopwright/line'
import type { Distribution } from '@loopwright/stats'
import { describe, expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { meanOf } from '../../../../tests/helpers/lucky.ts'
import { World } from './series.ts'
import { arrivalLuckOf, stopLuckOf } from './stopLuck.ts'

const source = (change: Partial<BreakdownSpec>): BreakdownSpec => ({
  name: 'jam',
  part: { kind: 'station', index: 1 },
  clock: 'operating',
  timeToFailureSeconds: { kind: 'exponential', mean: 1000 },
  repairSeconds: { kind: 'lognormal', mean: 60, cv: 0.7 },
  ...change,
})

describe('the luck of a source has the mean 0', () => {
  const gaps: Readonly<Record<string, Distribution>> = {
    exponential: { kind: 'exponential', mean: 1000 },
    ageing: { kind: 'weibull', shape: 3, scale: 1000 },
    rejuvenating: { kind: 'lognormal', mean: 1000, cv: 2 },
    'cut off': { kind: 'limited', of: { kind: 'exponential', mean: 900 }, shift: 100, min: null, max: 3000 },
    'of two values': { kind: 'discrete', values: [500, 1500], weights: [1, 1] },
  }
  // 4,000 worlds each; a mean more than 4.9 standard errors from 0 comes once in a million
  for (const clock of ['operating', 'calendar'] as const) {
    test.each(Object.entries(gaps))(`time to failure %s, ${clock} clock`, (_, timeToFailureSeconds) => {
      const luck = stopLuckOf(source({ clock, timeToFailureSeconds }), 200)!
      const { mean, standardError } = meanOf(4000, (world) => luck(world, { from: 700, to: 4200 }))
      expect(standardError).toBeGreaterThan(0)
      expect(Math.abs(mean)).toBeLessThan(4.9 * standardError)
      // seen to fail: failures 10 % more often than said would be found
      const off = 0.1 * 60 * 3.5
      expect(clock === 'calendar' || timeToFailureSeconds.kind === 'discrete' || off > 4.9 * standardError).toBe(true)
    })
  }
  test('repairs that are listed count as they are', () => {
    const luck = stopLuckOf(source({ repairSeconds: { kind: 'replay', values: [10, 100] } }), 1000)!
    const { mean, standardError } = meanOf(4000, (world) => luck(world, { from: 700, to: 4200 }))
    expect(Math.abs(mean)).toBeLessThan(4.9 * standardError)
  })
})

test('on an exponential clock it is the failures less the seconds over their mean, and the engine had the same', () => {
  // by the calendar, with repairs of 50 s: the run tells its failures, and the clock stood still for 50 s after each
  const stops = source({ clock: 'calendar', repairSeconds: { kind: 'constant', value: 50 } })
  const spec = stationLoop({ breakdowns: [stops], window: { warmupSeconds: 0, endSeconds: 7200 } })
  for (let replication = 0; replication < 20; replication++) {
    const { count, seconds } = simulate(spec, { seed: '8', replication }).breakdowns[0]!
    const luck = stopLuckOf(stops, 7200)!(new World('8', replication), { from: 0, to: 7200 })
    // each draw of the engine is rounded to a tick of its clock
    expect(luck).toBeCloseTo(50 * (count - (7200 - seconds) / 1000), 4)
  }
})

test('a repair counts up to the window, and nothing is told where nothing is left to chance', () => {
  const long = stopLuckOf(source({ repairSeconds: { kind: 'uniform', min: 90, max: 110 } }), 5)!
  const short = stopLuckOf(source({ repairSeconds: { kind: 'constant', value: 5 } }), 5)!
  const world = new World('8', 1)
  expect(long(world, { from: 0, to: 9000 })).toBeCloseTo(short(world, { from: 0, to: 9000 }), 9)
  expect(
    stopLuckOf(source({ timeToFailureSeconds: { kind: 'constant', value: 9 }, repairSeconds: { kind: 'constant', value: 5 } }), 5),
  ).toBeNull()
})

test('arrivals: one for each, less those to be expected', () => {
  const luck = arrivalLuckOf('supply', { kind: 'every', seconds: { kind: 'gamma', mean: 90, cv: 0.5 } })!
  const { mean, standardError } = meanOf(3000, (world) => luck(world, { from: 600, to: 4200 }))
  expect(Math.abs(mean)).toBeLessThan(4.9 * standardError)
  expect(arrivalLuckOf('supply', { kind: 'always' })).toBeNull()
  expect(arrivalLuckOf('supply', { kind: 'every', seconds: { kind: 'constant', value: 90 } })).toBeNull()
})
