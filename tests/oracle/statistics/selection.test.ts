import { bestTable } from '@loopwright/stats/procedures'
import { expect, test } from 'vitest'
import { knConstants } from '../../../packages/stats/src/select/kn.ts'
import { knSelect } from '../../helpers/knSelect.ts'
import { r1, ToyGenerator } from './toyGenerator.ts'
import { expectOfSize, expectRelative, readCases } from './vectors.ts'

test.each(readCases('selection', 'kn constants'))('$id constants, $input.k systems', ({ input, expect: want }) => {
  const got = knConstants({ systems: input.k, delta: 1, firstStage: input.n0, alpha: input.alpha })
  expectRelative(got.eta, want.eta, 1e-10)
  expectRelative(got.h2, want.h2, 1e-10)
})

test.each(readCases('selection', 'kn run'))('$id run, δ $input.delta', ({ input, expect: want }) => {
  // common noise of each replication, then each system's own, in order
  const toy = new ToyGenerator(input.seed)
  const rows: number[][] = []
  const rowOf = (replication: number): number[] => {
    while (rows.length <= replication) {
      const common = toy.z()
      rows.push(input.mu.map((mu: number) => r1(mu + 8 * common + 3 * toy.z())))
    }
    return rows[replication]!
  }
  expect([0, 1, 2].map(rowOf)).toEqual(input.firstRows)
  const options = { systems: input.mu.length, delta: input.delta, firstStage: input.n0, alpha: input.alpha }
  const got = knSelect(options, (system, replication) => rowOf(replication)[system]!)
  expect(got.selected + 1).toBe(want.selected)
  expect(got.stage).toBe(want.stage)
  expect(got.eliminated.map((one) => [one.system + 1, one.stage])).toEqual(want.eliminated)
  expect(got.replicationsMax).toBe(want.nMax)
  expect(got.observations).toBe(want.observations)
})

test.each(readCases('selection', 'mcb table'))('$id table against the best', ({ input, expect: want }) => {
  const columns = input.data[0].map((_: number, i: number) => input.data.map((row: number[]) => row[i]))
  const got = bestTable(columns, input.alpha)
  expectRelative(got.t, want.t, 1e-10)
  got.rows.forEach((row, i) => {
    expectOfSize(row.high, want.upper[i], 1e-10)
    expectOfSize(row.low, want.lower[i], 1e-10)
  })
  expect(got.rows.filter((row) => row.maybeBest).map((row) => row.system + 1)).toEqual(want.best)
})
