import { describe, expect, test } from 'vitest'
import { baseLineCount, baseLineSweep } from '../examples/baseLine.ts'
import { throughput } from './throughput.ts'

const sweep = baseLineSweep()
const domain = (figure: ReturnType<typeof throughput>) =>
  /"field":"p10"[^}]*?}|"domain":\[([\d.]+),([\d.]+)\],"nice":false,"zero":false\},"axis":\{"tickCount":6/.exec(JSON.stringify(figure.spec))

describe('throughput', () => {
  test('rows hold the numbers of the sweep', () => {
    const { rows } = throughput(sweep, { per: 'shift' })
    expect(rows.map(({ carriers }) => carriers)).toEqual([5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17])
    const ten = rows.find(({ carriers }) => carriers === 10)!
    const count = baseLineCount(10)
    expect(ten).toMatchObject({ mean: 330.2, low: count.mean!.low, high: count.mean!.high, p10: count.p10!.point, chosen: true })
    expect(rows.filter(({ chosen }) => chosen).length).toBe(1)
    expect(ten.tip).toBe('10 carriers: 330 ± 1 units per shift; P10 316, P90 344')
  })
  test('an upright axis that does not begin at 0 is said to', () => {
    const [, low, high] = domain(throughput(sweep))!
    expect(Number(low)).toBe(200)
    expect(Number(high)).toBeGreaterThan(358)
    expect(throughput(sweep).readLine).toContain('The upright axis begins at 200.')
  })
  test('a loop that stands still draws the axis down to 0', () => {
    const stuck = { ...baseLineCount(17), units: [0, 0], mean: { ...baseLineCount(17).mean!, mean: 0, low: 0, high: 0 }, gridlocks: 2 }
    const figure = throughput({ ...sweep, counts: [...sweep.counts.slice(0, -1), stuck] }, { per: 'shift' })
    expect(domain(figure)![1]).toBe('0')
    expect(figure.readLine).not.toContain('begins at')
    expect(figure.rows.at(-1)!.tip).toContain('stood still in 2')
  })
  test('where the line stood still it is said once for counts side by side, above their marks and inside the chart', () => {
    const still = (...carriers: readonly number[]) => {
      const counts = sweep.counts.map((count) => ({ ...count, gridlocks: carriers.includes(count.carriers) ? 1 : 0 }))
      const layers = (
        throughput({ ...sweep, counts }).spec as { layer: { data?: { values: object[] }; mark: { text?: unknown; align?: string } }[] }
      ).layer
      return layers
        .filter(({ mark }) => String(mark.text).startsWith('gridlock'))
        .filter((_, k) => k % 2 === 1)
        .map(({ data, mark }) => ({ ...data!.values[0]!, align: mark.align, text: mark.text }))
    }
    const top = (carriers: number) => baseLineCount(carriers).p90!.point
    expect(still()).toEqual([])
    expect(still(15, 16, 17)).toEqual([{ carriers: 17.5, units: top(15), align: 'right', text: 'gridlock at 15–17' }])
    expect(still(5, 7)).toEqual([
      { carriers: 4.5, units: top(5), align: 'left', text: 'gridlock at 5' },
      { carriers: 6.5, units: top(7), align: 'left', text: 'gridlock at 7' },
    ])
  })
  test('one replication a count: points without intervals', () => {
    const counts = sweep.counts.map((count) => ({ ...count, units: [300], mean: null, p10: null, p50: null, p90: null, meetsPlan: null }))
    const { rows, finding } = throughput({ ...sweep, counts, answer: null }, { per: 'shift' })
    expect(rows[0]).toMatchObject({ mean: 300, low: 300, p10: null })
    expect(finding).toContain('too few shifts')
  })
  test('no count, no chart', () => expect(() => throughput({ ...sweep, counts: [] })).toThrow(RangeError))
})
