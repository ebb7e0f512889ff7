import { describe, expect, test } from 'vitest'
import { normalQuantile } from '../special/normalQuantile.ts'
import { StatisticsError } from '../statisticsError.ts'
import type { Distribution } from './distribution.ts'
import { quantile, SamplerTable } from './samplerTable.ts'

const lognormal: Distribution = { kind: 'lognormal', mean: 20, cv: 0.3 }

describe('SamplerTable', () => {
  const table = new SamplerTable([
    { kind: 'constant', value: 4 },
    { kind: 'replay', values: [3, 1, 2] },
    lognormal,
    { kind: 'limited', of: { kind: 'constant', value: 4 }, shift: 2, min: null, max: null },
    { kind: 'limited', of: { kind: 'replay', values: [3, 1, 2] }, shift: 10, min: null, max: null },
    { kind: 'occasional', base: 1, probability: 0.1, of: { kind: 'constant', value: 5 } },
  ])
  const drawn = (index: number, u: number, k: number): number => {
    table.draw(index, u, k)
    return table.value[0]!
  }

  test('a constant takes nothing, a list its number, all else one uniform; those inside others do not count', () => {
    expect([0, 1, 2, 3, 4, 5].map((i) => table.uses(i))).toEqual(['nothing', 'index', 'uniform', 'nothing', 'index', 'uniform'])
    expect(table.size).toBe(6)
  })
  test('a shifted constant, a shifted list', () => {
    expect(drawn(3, 0.5, 0)).toBe(6)
    expect([0, 4].map((k) => drawn(4, 0.5, k))).toEqual([13, 11])
  })
  test('drawAt reads the uniform from a list and leaves it there', () => {
    const list = Float64Array.of(0.1, 0.7)
    table.drawAt(2, list, 1, 0)
    expect(table.value[0]).toBe(quantile(lognormal, 0.7))
    expect([...list]).toEqual([0.1, 0.7])
  })
  test('what is made from a normal quantile is the same from the quantile as from the uniform', () => {
    expect([0, 1, 2, 3, 4, 5].map((i) => table.isFromNormal(i))).toEqual([false, false, true, false, false, false])
    const list = new Float64Array(2)
    for (const u of [1e-12, 0.004, 0.3, 0.5, 0.9, 1 - 1e-9]) {
      list[1] = normalQuantile(u)
      table.drawFromNormal(2, list, 1)
      expect(table.value[0]).toBe(drawn(2, u, 0))
    }
  })
  test('a block gives what one by one gives, to the last bit', () => {
    const list = Float64Array.from({ length: 40 }, (_, k) => (k + 0.5) / 40)
    const kinds: Distribution[] = [
      lognormal,
      { kind: 'exponential', mean: 3 },
      { kind: 'gamma', mean: 5, cv: 0.5 },
      { kind: 'triangular', min: 1, mode: 2, max: 5 },
    ]
    const blocks = new SamplerTable(kinds)
    for (let index = 0; index < kinds.length; index++) {
      const block = list.slice()
      blocks.drawBlock(index, block, 4, 32)
      const one = Array.from(list, (u, k) => {
        if (k < 4 || k >= 36) return u
        blocks.draw(index, u, 0)
        return blocks.value[0]!
      })
      expect([...block]).toEqual(one)
    }
  })
  test('draws of one distribution do not touch those of another', () => {
    const alone = quantile(lognormal, 0.3)
    drawn(5, 0.95, 0)
    expect(drawn(2, 0.3, 0)).toBe(alone)
  })
  test('an empty table is one; a wrong distribution is refused', () => {
    expect(new SamplerTable([]).size).toBe(0)
    expect(() => new SamplerTable([lognormal, { kind: 'exponential', mean: 0 }])).toThrow(StatisticsError)
    for (const u of [0, 1, Number.NaN]) expect(() => quantile(lognormal, u)).toThrow(StatisticsError)
    expect(() => quantile({ kind: 'exponential', mean: 0 }, 0.5)).toThrow('This exponential cannot be used: mean is 0; it must be above 0.')
  })
})
