import { expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { meanOf } from '../../../../tests/helpers/lucky.ts'
import { safetyLuckOf } from './safetyLuck.ts'
import { World } from './series.ts'

const station = (probability: number) => ({
  ...stationLoop().stations[1]!,
  safetyStop: { probability, resetSeconds: { kind: 'exponential', mean: 30 } as const },
})

test('it has the mean 0 over a number of moves', () => {
  const luck = safetyLuckOf(station(0.05), 100)!
  const { mean, standardError } = meanOf(4000, (world) => luck(world, { from: 50, to: 250 }))
  // false alarm 1e-6; one stop in ten more would be 31 s, and is found
  expect(Math.abs(mean)).toBeLessThan(4.9 * standardError)
  expect(0.1 * 200 * 0.05 * 30).toBeGreaterThan(4.9 * standardError)
})

test('the first uniform of a move says whether, and the resets follow in order of use', () => {
  const world = new World('3', 0)
  const strikes = Array.from({ length: 100 }, (_, move) => world.uniform('safety/B', 2 * move) < 0.2)
  const resets = strikes.filter(Boolean).map((_, k) => -30 * Math.log1p(-world.uniform('reset/B', k)))
  const before = strikes.slice(0, 40).filter(Boolean).length
  const got = safetyLuckOf(station(0.2), 1e9)!(world, { from: 40, to: 100 })
  expect(got).toBeCloseTo(resets.slice(before).reduce((sum, seconds) => sum + seconds, 0) - 60 * 0.2 * 30, 8)
  expect(safetyLuckOf(stationLoop().stations[0]!, 100)).toBeNull()
})
