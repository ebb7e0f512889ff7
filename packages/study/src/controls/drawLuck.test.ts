import { expect, test } from 'vitest'
import { rejectLuckOf, sumOver, useLuckOf } from './drawLuck.ts'
import { meanOf } from '../../../../tests/helpers/lucky.ts'
import { World } from './series.ts'

test('uses of a stream: their sum less as many means', () => {
  const luck = useLuckOf('receiver/U', { kind: 'uniform', min: 40, max: 60 })!
  const world = new World('3', 0)
  const drawn = [5, 6, 7].map((k) => 40 + 20 * world.uniform('receiver/U', k))
  expect(luck(world, { from: 5, to: 8 })).toBeCloseTo(drawn[0]! + drawn[1]! + drawn[2]! - 150, 10)
  expect(useLuckOf('receiver/U', { kind: 'constant', value: 3 })).toBeNull()
})

test('rejects: those of a stretch of serials less as many chances; of mean 0', () => {
  const luck = rejectLuckOf('check', 0.1)
  const { mean, standardError } = meanOf(3000, (world) => luck(world, { from: 20, to: 120 }))
  // the sd of a number of 100 with the chance 0.1 is 3, by the binomial: ± 4.9 standard errors of an sd
  expect(standardError * Math.sqrt(3000)).toBeGreaterThan(3 * 0.93)
  expect(standardError * Math.sqrt(3000)).toBeLessThan(3 * 1.07)
  expect(Math.abs(mean)).toBeLessThan(4.9 * standardError)
})

test('a sum over a stretch takes its beginning, not its end', () => {
  expect(sumOver({ from: 2, to: 5 }, (k) => k)).toBe(9)
})
