import { expect, test } from 'vitest'
import { needNotNegative, needPositive, needProbability, needShare, notSettled } from './domain.ts'

test('values in range pass', () => {
  needPositive('f', 'x', 1e-300)
  needNotNegative('f', 'x', 0)
  needProbability('f', 0.5)
  needShare('f', 'x', 0)
  needShare('f', 'x', 1)
})

test('those out of range are refused with name and value', () => {
  expect(() => needPositive('lnGamma', 'x', 0)).toThrow('lnGamma: x is 0; it must be above 0 and finite.')
  expect(() => needPositive('lnGamma', 'x', Infinity)).toThrow('x is Infinity')
  expect(() => needNotNegative('gammaP', 'x', -1)).toThrow('gammaP: x is -1; it must be 0 or more.')
  expect(() => needProbability('tQuantile', 1)).toThrow('tQuantile: the probability is 1; it must be above 0 and below 1.')
  expect(() => needShare('betaTails', 'x', Number.NaN)).toThrow('betaTails: x is NaN; it must lie in 0 … 1.')
  expect(notSettled('gammaP', 500).message).toBe('gammaP: no answer after 500 steps; the arguments are too extreme for this method.')
})
