import { marksOf } from '../../../../tests/helpers/marksOf.ts'
import { describe, expect, test } from 'vitest'
import { baseLineCount, baseLineSweep } from '../examples/baseLine.ts'
import { throughput } from './throughput.ts'

const sweep = baseLineSweep()
describe('throughput', () => {
  const figure = throughput(sweep, { per: 'shift', choice: 'carriers' })
  test('a dot for each count, the chosen one larger, and what it says when it is pointed at', () => {
    const dots = marksOf(figure, 'dot')
    expect(dots.map(({ x }) => x)).toEqual([5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17])
    expect(dots.filter(({ ink }) => ink === 'chosenDot').map(({ x, y }) => [x, y])).toEqual([[10, 330.2]])
    const touched = marksOf(figure, 'area').find(({ pick }) => pick === '10')!
    expect(touched.tip).toBe('10 carriers: 330 ± 1 units per shift; P10 316, P90 344')
    expect(figure.drawing.choice).toBe('carriers')
  })
  test('the bar of a count goes from P10 to P90, its thin bar over the interval of the mean', () => {
    const count = baseLineCount(10)
    const bar = marksOf(figure, 'area').find(({ ink, x }) => ink === 'band' && x[0] === 9.8)!
    expect(bar.y).toEqual([count.p10!.point, count.p90!.point])
    const whisker = marksOf(figure, 'rule').find(({ ink, x }) => ink === 'whisker' && x[0] === 10)!
    expect(whisker.y).toEqual([count.mean!.low, count.mean!.high])
  })
  test('an upright axis that does not begin at 0 is marked, and said to', () => {
    expect(figure.drawing.up).toMatchObject({ from: 200, cut: true })
    expect(figure.drawing.up.to).toBeGreaterThan(358)
    expect(figure.readLine).toContain('The upright axis begins at 200.')
  })
  test('a loop that stands still draws the axis down to 0', () => {
    const stuck = {
      ...baseLineCount(17),
      units: [0, 0],
      mean: { ...baseLineCount(17).mean!, mean: 0, low: 0, high: 0 },
      gridlocks: 2,
      replications: 2,
    }
    const all = throughput({ ...sweep, counts: [...sweep.counts.slice(0, -1), stuck] }, { per: 'shift' })
    expect(all.drawing.up.from).toBe(0)
    expect(all.readLine).not.toContain('begins at')
    expect(marksOf(all, 'area').at(-1)!.tip).toBe('17 carriers: stood still for good in 2 of 2')
  })
  test('of a count that stood still in some runs those and the others have a mark each, and no mean of both', () => {
    const moving = { replications: 2, mean: { ...baseLineCount(17).mean!, mean: 280 }, low: 270, high: 290 }
    const count = { ...baseLineCount(17), units: [270, 290, 30, 50], replications: 4, gridlocks: 2, moving }
    const all = throughput({ ...sweep, counts: [...sweep.counts.slice(0, -1), count] }, { per: 'shift' })
    // 560 of 640 units by the two runs that move: 40 each for the others
    expect(marksOf(all, 'dot').filter(({ x }) => x === 17)).toMatchObject([
      { y: 280, ink: 'openDot' },
      { y: 40, shape: 'cross' },
    ])
    expect(all.drawing.key!.map(({ text }) => text)).toContain('runs that stood still')
  })
  test('the count that the answer names may be another one, or none', () => {
    const named = (of: number | null) =>
      marksOf(throughput(sweep, { named: of }), 'dot').flatMap(({ x, ink }) => (ink === 'chosenDot' ? [x] : []))
    expect([named(12), named(null)]).toEqual([[12], []])
  })
  test('one replication a count: points without intervals', () => {
    const counts = sweep.counts.map((count) => ({ ...count, units: [300], mean: null, p10: null, p50: null, p90: null, meetsPlan: null }))
    const points = throughput({ ...sweep, counts, answer: null }, { per: 'shift' })
    const { finding } = points
    expect(marksOf(points, 'dot')[0]).toMatchObject({ y: 300 })
    expect(marksOf(points, 'rule').filter(({ ink }) => ink === 'whisker' || ink === 'bandEdge')).toEqual([])
    expect(finding).toContain('too few shifts')
  })
  test('counts that all make the same have an axis around them', () => {
    const same = {
      ...baseLineCount(10),
      mean: { ...baseLineCount(10).mean!, mean: 24, low: 24, high: 24 },
      p10: null,
      p50: null,
      p90: null,
    }
    const { up } = throughput({ ...sweep, counts: [same], plan: null, law: null }).drawing
    expect([up.from, up.to > 24]).toEqual([22, true])
  })
  test('no count, no chart', () => expect(() => throughput({ ...sweep, counts: [] })).toThrow(RangeError))
})
