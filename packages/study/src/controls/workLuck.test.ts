import type { LineSpec } from '@loopwright/line'
import { describe, expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { meanOf } from '../../../../tests/helpers/lucky.ts'
import { World } from './series.ts'
import { workLuckOf } from './workLuck.ts'

const lognormal = (mean: number) => ({ kind: 'lognormal', mean, cv: 0.3 }) as const
const line = (mix: LineSpec['mix']): LineSpec => {
  const spec = stationLoop({ variants: ['one', 'two'], mix })
  const stations = spec.stations.map((station) => ({ ...station, unload: station.unload && [], load: station.load && [] }))
  stations[1] = { ...stations[1]!, work: [{ task: 1, seconds: [lognormal(20), lognormal(50)] }] }
  return { ...spec, stations }
}

describe('the luck of work has the mean 0', () => {
  test.each([
    { kind: 'random', shares: [3, 1] },
    { kind: 'levelled', shares: [3, 1] },
    { kind: 'pattern', sequence: [0, 1, 1] },
    { kind: 'list', sequence: [0, 1, 0, 0, 1, 0, 1, 0, 1, 1, 0, 0] },
  ] as const)('with a mix $kind', (mix) => {
    const luck = workLuckOf(line(mix), [1])!
    const { mean, standardError } = meanOf(3000, (world) => luck(world, { from: 5, to: 25 }))
    expect(standardError).toBeGreaterThan(0)
    expect(Math.abs(mean)).toBeLessThan(4.9 * standardError) // false alarm 1e-6
  })
})

test('a mix that is drawn is luck too: its share of the variance is that of a mean of 20 s and 50 s', () => {
  const drawn = meanOf(2000, (world) => workLuckOf(line({ kind: 'random', shares: [1, 1] }), [1])!(world, { from: 0, to: 20 }))
  const levelled = meanOf(2000, (world) => workLuckOf(line({ kind: 'levelled', shares: [1, 1] }), [1])!(world, { from: 0, to: 20 }))
  // per product 15² for the mix and (0.3²)(20² + 50²)/2 for the times: standard errors as √(225 + 130.5) to √130.5; ± 4.9 standard errors of a ratio of sds
  const ratio = drawn.standardError / levelled.standardError
  expect(ratio).toBeGreaterThan(Math.sqrt(355.5 / 130.5) * 0.89)
  expect(ratio).toBeLessThan(Math.sqrt(355.5 / 130.5) * 1.12)
})

test('draw k belongs to serial k, and a constant task has no luck', () => {
  const spec = stationLoop()
  const world = new World('4', 2)
  const one = workLuckOf(spec, [0, 1, 2])!
  expect(one(world, { from: 3, to: 5 })).toBeCloseTo(one(world, { from: 3, to: 4 }) + one(world, { from: 4, to: 5 }), 10)
  expect(workLuckOf(spec, [0, 2])).toBeNull()
})
