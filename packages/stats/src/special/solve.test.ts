import { expect, test } from 'vitest'
import { solveRising } from './solve.ts'

test('Newton alone', () => {
  const root = solveRising('root', 1, (x, out) => {
    out[0] = x ** 3 - 2
    out[1] = 3 * x * x
  })
  expect(root).toBeCloseTo(Math.cbrt(2), 15)
})

test('a slope that would throw it far away is held by the bracket', () => {
  const root = solveRising('root', 50, (x, out) => {
    out[0] = Math.atan(x - 3)
    out[1] = 1 / (1 + (x - 3) ** 2)
  })
  expect(root).toBeCloseTo(3, 13)
})

test('no root is refused, not guessed', () => {
  const rising = (x: number, out: Float64Array): void => {
    out[0] = Math.sign(x) + 5
    out[1] = 0
  }
  expect(() => solveRising('nothing', 0, rising)).toThrow('nothing: no answer after 500 steps')
})
