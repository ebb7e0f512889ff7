import { expect, test } from 'vitest'
import { pairedDifference, pairedLowerLimit } from './pairedDifference.ts'

test('no spread is normal: it says whether they are the same', () => {
  expect(pairedDifference([101, 99, 104], [101, 99, 104])).toMatchObject({
    status: 'identical in every replication',
    mean: 0,
    pairingGain: null,
  })
  expect(pairedDifference([3, 5, 9], [2, 4, 8])).toMatchObject({
    status: 'always differs by the same',
    mean: 1,
    low: 1,
    high: 1,
    halfWidth: 0,
  })
  // 0.3 − 0.2 and 0.2 − 0.1 differ by rounding alone
  expect(pairedDifference([0.3, 0.2, 0.7], [0.2, 0.1, 0.6]).status).toBe('always differs by the same')
})

test('a difference is shown where the interval leaves 0 out', () => {
  expect(pairedDifference([3, 5, 9, 4], [1, 2, 7, 1]).status).toBe('difference shown')
  expect(pairedDifference([1, 2, 7, 1], [3, 5, 9, 4]).status).toBe('difference shown')
  expect(pairedDifference([3, 5, 9, 4], [4, 4, 9, 5]).status).toBe('no difference shown')
})

test('pairing worlds that do not line up is worth less than nothing', () => {
  expect(pairedDifference([1, 2, 3], [3, 2, 1]).pairingGain).toBe(0.5)
})

test('the one-sided limit lies above the low end of the two-sided interval of the same level', () => {
  const differences = [1, 4, 2, 5, 3]
  expect(pairedLowerLimit(differences).low).toBeGreaterThan(pairedDifference(differences, [0, 0, 0, 0, 0]).low)
  expect(pairedLowerLimit([2, 2, 2])).toEqual({ n: 3, mean: 2, sd: 0, level: 0.95, low: 2, status: 'no spread' })
})

test('refused', () => {
  expect(() => pairedDifference([1, 2], [1, 2, 3])).toThrow('The first scenario has 2 values and the second has 3')
  expect(() => pairedDifference([1], [1])).toThrow(expect.objectContaining({ code: 'E_TOO_FEW' }))
  expect(() => pairedLowerLimit([1])).toThrow(expect.objectContaining({ code: 'E_TOO_FEW' }))
  expect(() => pairedLowerLimit([1, 2], 2)).toThrow('The level is 2')
})
