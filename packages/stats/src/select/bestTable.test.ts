import { expect, test } from 'vitest'
import { stream } from '../random/stream.ts'
import { normalQuantile } from '../special/normalQuantile.ts'
import { bestTable } from './bestTable.ts'

test('all intervals together hold in 95 of 100 studies', () => {
  // 2,000 studies of four systems: at least 0.95 − 4.9 standard errors of 0.0049, false alarm 1e-6
  const next = stream('7', 0, 'best table')
  const means = [10, 9, 9.5, 7]
  let held = 0
  for (let s = 0; s < 2000; s++) {
    const outputs: number[][] = means.map(() => [])
    for (let r = 0; r < 10; r++) {
      const common = 5 * normalQuantile(next())
      means.forEach((mean, i) => void outputs[i]!.push(mean + common + normalQuantile(next())))
    }
    const rows = bestTable(outputs).rows
    const all = rows.every((row, i) => {
      const distance = means[i]! - Math.max(...means.filter((_, l) => l !== i))
      return row.low <= distance && distance <= row.high
    })
    if (all) held++
  }
  expect(held / 2000).toBeGreaterThan(0.95 - 4.9 * 0.0049)
})

test('two that are identical in every replication may both be the best', () => {
  const { rows } = bestTable([
    [5, 6, 7],
    [5, 6, 7],
    [1, 2, 3],
  ])
  expect(rows.map((row) => row.maybeBest)).toEqual([true, true, false])
  expect(rows.map((row) => [row.low, row.high])).toEqual([
    [0, 0],
    [0, 0],
    [-4, 0],
  ])
})

test('a system alone at the top is not worse than any', () => {
  const { rows } = bestTable([
    [5, 6, 7],
    [1, 2, 3.5],
  ])
  expect(rows[0]!.low).toBe(0)
  expect(rows[0]!.high).toBeGreaterThan(3)
  expect(rows[1]!.high).toBe(0)
})

test('refused', () => {
  expect(() => bestTable([[1, 2]])).toThrow('Cannot give a table against the best from 1 system')
  expect(() => bestTable([[1, 2], [1]])).toThrow('System 1 has 2 values and system 2 has 1')
  expect(() => bestTable([[1], [1]])).toThrow(expect.objectContaining({ code: 'E_TOO_FEW' }))
  expect(() =>
    bestTable(
      [
        [1, 2],
        [1, 2],
      ],
      0,
    ),
  ).toThrow('The chance of error is 0')
})
