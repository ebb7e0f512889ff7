import { describe, expect, test } from 'vitest'
import { openDraws } from './draws.ts'
import { firstBeyond, inverse } from './inverse.ts'
import { normalInverse, normalShare } from './normal.ts'

test('percentage points of the normal distribution', () => {
  // The three values that the paper of AS 241 gives for checking (from memory)
  expect(normalInverse(0.25)).toBeCloseTo(-0.6744897501960817, 15)
  expect(normalInverse(0.001)).toBeCloseTo(-3.090232306167813, 14)
  expect(normalInverse(1e-20)).toBeCloseTo(-9.26234008979841, 13)
  // statistical tables, 97.5 % (from memory)
  expect(normalInverse(0.975)).toBeCloseTo(1.959963984540054, 14)
  for (const p of [0.001, 0.2, 0.5, 0.8, 0.999]) expect(normalShare(normalInverse(p))).toBeCloseTo(p, 14)
})

describe('inverses at points that can be worked out by hand', () => {
  test.each([
    ['uniform 2..6 at ¼', inverse({ kind: 'uniform', min: 2, max: 6 }, 0.25), 3],
    // 0..10 with mode 4: a share of 0.4 lies below the mode; at 0.1: √(0.1·10·4) = 2; at 0.85: 10 − √(0.15·10·6) = 7
    ['triangular below its mode', inverse({ kind: 'triangular', min: 0, mode: 4, max: 10 }, 0.1), 2],
    ['triangular above its mode', inverse({ kind: 'triangular', min: 0, mode: 4, max: 10 }, 0.85), 7],
    ['exponential at its median', inverse({ kind: 'exponential', mean: 3 }, 0.5), 3 * Math.LN2],
    // lognormal median = mean / √(1 + cv²): 5 / √(1 + (4/3)²) = 3
    ['lognormal at its median', inverse({ kind: 'lognormal', mean: 5, cv: 4 / 3 }, 0.5), 3],
    // Weibull of shape 2 at 1 − e⁻⁴: √4 scales
    ['Weibull', inverse({ kind: 'weibull', shape: 2, scale: 3 }, 1 - Math.exp(-4)), 6],
    // gamma with cv 1 is exponential; PERT with its mode in the middle is symmetric
    ['gamma with cv 1', inverse({ kind: 'gamma', mean: 3, cv: 1 }, 0.5), 3 * Math.LN2],
    ['PERT at its median', inverse({ kind: 'pert', min: 2, mode: 5, max: 8 }, 0.5), 5],
    ['empirical', inverse({ kind: 'empirical', values: [9, 1, 4], interpolate: false }, 0.34), 4],
    // h = 2·0.75 = 1.5: half way from 4 to 9
    ['empirical, interpolated', inverse({ kind: 'empirical', values: [9, 1, 4], interpolate: true }, 0.75), 6.5],
    ['discrete', inverse({ kind: 'discrete', values: [5, 7], weights: [1, 3] }, 0.25), 7],
    // u < 1 − p: the base; at u = 0.9, p = 0.2: base + of at 0.5
    ['occasional, without', inverse({ kind: 'occasional', base: 4, probability: 0.2, of: { kind: 'uniform', min: 0, max: 2 } }, 0.79), 4],
    ['occasional, with', inverse({ kind: 'occasional', base: 4, probability: 0.2, of: { kind: 'uniform', min: 0, max: 2 } }, 0.9), 5],
    // 1 + uniform 0..10, cut to 3..7: uniform 3..7
    ['limited', inverse({ kind: 'limited', of: { kind: 'uniform', min: 0, max: 10 }, shift: 1, min: 3, max: 7 }, 0.25), 4],
  ])('%s', (_, value, expected) => {
    expect(value).toBeCloseTo(expected, 9)
  })

  test('shares: the first whose cumulated share exceeds u', () => {
    expect([0, 0.249, 0.25, 0.999].map((u) => firstBeyond(u, [0, 1, 0, 3]))).toEqual([1, 1, 3, 3])
  })
})

test('draw k belongs to product k in whatever order it is asked for; other streams count their uses, constants none', () => {
  const d = { kind: 'exponential', mean: 10 } as const
  const forward = openDraws('s', 0)
  const backward = openDraws('s', 0)
  const three = [0, 1, 2].map((k) => forward.forProduct('task/a', d, k))
  expect([2, 1, 0].map((k) => backward.forProduct('task/a', d, k)).reverse()).toEqual(three)
  const inOrder = openDraws('s', 0)
  const used = [0, 1, 2].map(() => {
    inOrder.inOrder('task/a', { kind: 'constant', value: 1 })
    return inOrder.inOrder('task/a', d)
  })
  expect(used).toEqual(three)
  const replay = { kind: 'replay', values: [1, 2] } as const
  expect([0, 1, 2].map(() => inOrder.inOrder('down/x', replay))).toEqual([1, 2, 1])
  expect(openDraws('s', 1).forProduct('task/a', d, 0)).not.toBe(three[0])
})
