import { describe, expect, test } from 'vitest'
import type { Distribution } from './distribution.ts'
import { checkDistribution, distributionCdf, distributionMean, distributionVariance } from './distributions.ts'
import { quantile, SamplerTable } from './samplerTable.ts'

describe('replay', () => {
  test.each<[unknown, string[]]>([[{ kind: 'replay', values: [1, 'x'] }, ['values holds "x" in row 2; each must be 0 or more']]])(
    '%j is told why not',
    (d, reasons) => expect(checkDistribution(d as Distribution)).toEqual(reasons),
  )

  test('it goes round, however many draws', () => {
    const table = new SamplerTable([{ kind: 'replay', values: [3, 1, 2] }])
    const taken = [0, 1, 2, 3, 4, 1_000_000_000].map((k) => {
      table.draw(0, 0.5, k)
      return table.value[0]
    })
    expect(taken).toEqual([3, 1, 2, 3, 1, 1])
  })
  test('as a distribution it is a sample of its values', () => {
    const d: Distribution = { kind: 'replay', values: [3, 1, 2] }
    expect([distributionMean(d), distributionVariance(d), distributionCdf(d, 2), quantile(d, 0.9)]).toEqual([2, 2 / 3, 2 / 3, 3])
  })
})
