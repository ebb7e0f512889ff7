import { describe, expect, test } from 'vitest'
import { stream } from '../random/stream.ts'
import { normalQuantile } from '../special/normalQuantile.ts'
import { shownControls } from './shownControls.ts'

const next = stream('7', 0, 'shown controls')
const normal = (): number => normalQuantile(next())
const exponential = (): number => -Math.log1p(-next())
const times = <T>(n: number, of: (k: number) => T): T[] => Array.from({ length: n }, (_, k) => of(k))

/** so many studies of n worlds with two controls, of which the first tells nearly all; the mean of the output is 150 */
function studies(count: number, n: number, slope: number): { readonly held: number; readonly shown: number } {
  let held = 0
  let shown = 0
  for (let s = 0; s < count; s++) {
    const stops = times(n, () => exponential() + exponential() + exponential() + exponential() - 4)
    const work = times(n, normal)
    const output = times(n, (k) => 150 - slope * stops[k]! + 2 * normal())
    const found = shownControls(output, [
      { name: 'stops', values: stops, mean: 0 },
      { name: 'work', values: work, mean: 0 },
    ])
    if (found === null) continue
    shown++
    if (found.low <= 150 && 150 <= found.high) held++
  }
  return { held, shown }
}

describe('a mean with the luck of its worlds taken out', () => {
  test.each([30, 50, 100])('holds its word with %i replications, and is worth more than they are', (n) => {
    const { held, shown } = studies(1000, n, 3)
    // the controls are rather skewed (1), so that some samples are told plainly, the more the smaller they are
    expect(shown).toBeGreaterThan(500)
    // 0.95 ± 4.9 standard errors of 1,000 studies: false alarm 1e-6
    expect(Math.abs(held / shown - 0.95)).toBeLessThan(4.9 * Math.sqrt((0.95 * 0.05) / shown))
  })

  test('is hardly ever shown where the controls have nothing to do with the output', () => {
    // a share of variance below 0.8 by luck alone: with 50 worlds and up to two controls F > 6 or so, below 1 in 60; 5 % of 1,000 studies are 7 standard errors away
    expect(studies(1000, 50, 0).shown).toBeLessThan(50)
  })

  test('says how many plain replications would do as well', () => {
    const stops = times(200, normal)
    const output = times(200, (k) => 100 - 3 * stops[k]! + normal())
    const found = shownControls(output, [{ name: 'stops', values: stops, mean: 0 }])!
    expect(found).toMatchObject({ n: 200, controls: ['stops'], batches: 50, level: 0.95 })
    // the variance without control is 3² + 1², with it 1²: ten times; ± 4.9 standard errors of a ratio of variances with 199 and 48 degrees of freedom
    expect(found.worth! / 200).toBeGreaterThan(10 / 2.6)
    expect(found.worth! / 200).toBeLessThan(10 * 2.6)
    expect(found.halfWidth).toBeCloseTo((found.high - found.low) / 2, 12)
  })

  test('has no limit to its worth where the output follows the control exactly', () => {
    const values = times(40, normal)
    const found = shownControls(
      values.map((value) => 10 - 2 * value),
      [{ name: 'work', values, mean: 0 }],
    )!
    expect(found.mean).toBeCloseTo(10, 10)
    expect(found.halfWidth).toBeLessThan(1e-10)
  })
})

describe('told plainly', () => {
  const values = times(100, normal)
  const output = values.map((value) => 10 + value + 0.1 * normal())
  const control = { name: 'stops', values, mean: 0 }

  test('below 30 replications', () => {
    expect(shownControls(output.slice(0, 29), [{ ...control, values: values.slice(0, 29) }])).toBeNull()
    expect(shownControls(output.slice(0, 30), [{ ...control, values: values.slice(0, 30) }])).not.toBeNull()
  })
  test('without a control that varies, and without an output that does', () => {
    expect(shownControls(output, [])).toBeNull()
    expect(shownControls(output, [{ name: 'idle', values: output.map(() => 3), mean: 3 }])).toBeNull()
    expect(
      shownControls(
        output.map(() => 7),
        [control],
      ),
    ).toBeNull()
  })
  test('where one world in a hundred is all that a control tells', () => {
    const rare = values.map((_, k) => (k === 17 ? 99 : -1))
    expect(
      shownControls(
        rare.map((value) => 10 - value),
        [{ name: 'stops', values: rare, mean: 0 }],
      ),
    ).toBeNull()
  })
  test('controls that move together are no set, but each may be one', () => {
    expect(shownControls(output, [control, { ...control, name: 'again' }])?.controls).toEqual(['stops'])
  })
})

test('refused: a control of another length, and a level that is no share', () => {
  expect(() => shownControls(times(40, normal), [{ name: 'stops', values: times(39, normal), mean: 0 }])).toThrow('40')
  expect(() => shownControls([1, 2], [], 1)).toThrow('level')
})
