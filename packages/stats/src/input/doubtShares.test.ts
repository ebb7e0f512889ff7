import { expect, test } from 'vitest'
import { stream } from '../random/stream.ts'
import { doubtShares } from './doubtShares.ts'

test('two inputs, by hand: y = 3a − 2b + 1', () => {
  const levels = [
    [0, 0],
    [1, 0],
    [0, 1],
    [2, 1],
    [1, 3],
  ]
  const shares = doubtShares(
    levels.map(([a, b]) => 3 * a! - 2 * b! + 1),
    levels,
  )
  expect(shares.map(({ slope }) => slope)).toEqual([expect.closeTo(3, 12), expect.closeTo(-2, 12)])
  // variances of the levels: 0.7 and 1.5
  expect(shares.map(({ variance }) => variance)).toEqual([expect.closeTo(6.3, 10), expect.closeTo(6, 10)])
})

test('what does not vary adds nothing; noise is not taken for a slope', () => {
  const uniform = stream('doubt', 0, 'levels')
  const levels = Array.from({ length: 400 }, () => [uniform(), 5, uniform()])
  const shares = doubtShares(
    levels.map(([a]) => 10 * a! + 0.1 * uniform()),
    levels,
  )
  expect(shares[1]).toEqual({ slope: 0, variance: 0 })
  expect(Math.abs(shares[0]!.slope - 10)).toBeLessThan(0.05)
  expect(Math.abs(shares[2]!.slope)).toBeLessThan(0.05)
})

test('too few draws are refused', () => expect(() => doubtShares([1, 2], [[1], [2]])).toThrow('at least 3'))
