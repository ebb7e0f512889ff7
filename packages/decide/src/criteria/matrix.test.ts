import { describe, expect, test } from 'vitest'
import { anchoredScore, decisionMatrix, type MatrixInput } from './matrix.ts'

const input = (over: Partial<MatrixInput> = {}): MatrixInput => ({
  alternatives: ['push', 'loop', 'vehicles'],
  mustHaves: [],
  criteria: [
    { name: 'output', weight: 50, scores: [1, 5, 2] },
    { name: 'floor', weight: 20, scores: [5, 4, 1] },
    { name: 'flexibility', weight: 30, scores: [5, 2, 4] },
  ],
  ...over,
})

test('totals by hand: 50 · 1 + 20 · 5 + 30 · 5 = 300, 390, 240', () => {
  const { totals, order, winners } = decisionMatrix(input(), '1')
  expect(totals).toEqual([3, 3.9, 2.4])
  expect([order, winners]).toEqual([[1, 0, 2], [1]])
})

test('what misses a must-have is out, whatever it scores', () => {
  const { winners, misses, order, winShares } = decisionMatrix(
    input({ mustHaves: [{ name: 'fits the hall', met: [true, false, true] }] }),
    '1',
  )
  expect([winners, order, misses[1]]).toEqual([[0], [0, 2], ['fits the hall']])
  expect(winShares[1]).toBe(0)
})

test('nobody wins where all are out', () => {
  const { winners, winShares, cases } = decisionMatrix(input({ mustHaves: [{ name: 'x', met: [false, false, false] }] }), '1')
  expect([winners, winShares]).toEqual([[], [0, 0, 0]])
  expect(cases.every((one) => one.winners.length === 0)).toBe(true)
})

describe('robustness', () => {
  test('weights 30 % more and less, and each criterion left out, by hand', () => {
    const { cases } = decisionMatrix(input(), '1')
    const of = (criterion: string, change: string) => cases.find((one) => one.criterion === criterion && one.change === change)!.winners
    expect(cases).toHaveLength(9)
    // without output: (20 · 5 + 30 · 5)/50 = 5 for the push line
    expect([of('output', 'left out'), of('output', 'more'), of('floor', 'less')]).toEqual([[0], [1], [1]])
  })
  test('an alternative that is best by each criterion wins always; the same seed gives the same', () => {
    const best = input({
      criteria: [
        { name: 'a', weight: 50, scores: [1, 5, 2] },
        { name: 'b', weight: 50, scores: [2, 4, 3] },
      ],
    })
    expect(decisionMatrix(best, '1').winShares).toEqual([0, 1, 0])
    expect(decisionMatrix(input(), '7')).toEqual(decisionMatrix(input(), '7'))
  })
  test('equal weights of opposite scores: each wins half of the draws, but for ties (2 000 draws, false alarm 1 in 10 000)', () => {
    const even = input({
      alternatives: ['a', 'b'],
      criteria: [
        { name: 'x', weight: 50, scores: [5, 1] },
        { name: 'y', weight: 50, scores: [1, 5] },
      ],
    })
    const { winShares, tieShare, winners } = decisionMatrix(even, '1')
    expect(winners).toEqual([0, 1])
    expect(tieShare).toBeGreaterThan(0)
    expect(winShares[0]! + winShares[1]! - tieShare).toBeCloseTo(1, 12)
    expect(Math.abs(winShares[0]! - winShares[1]!)).toBeLessThan(2 * 3.9 * Math.sqrt(0.25 / 2000))
  })
})

test('anchors: in a straight line, never beyond 1 and 5, also where less is better', () => {
  expect([300, 330, 340, 280, 400].map((units) => anchoredScore(units, 300, 340))).toEqual([1, 4, 5, 1, 5])
  expect(anchoredScore(205, 260, 150)).toBe(3)
})

test.each([
  [{ criteria: [{ name: 'a', weight: 90, scores: [1, 1, 1] }] }, 'sum to 100, not to 90'],
  [{ criteria: [{ name: 'a', weight: 100, scores: [1, 6, 1] }] }, 'a score is from 1 to 5, and "a" has 6'],
  [{ criteria: [{ name: 'a', weight: 100, scores: [1] }] }, '"a" has 1 scores for 3 alternatives'],
  [{ mustHaves: [{ name: 'm', met: [true] }] }, '"m" says 1 answers for 3 alternatives'],
])('refused: %j', (over, says) => expect(() => decisionMatrix(input(over as never), '1')).toThrow(says))
