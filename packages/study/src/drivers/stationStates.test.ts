import { expect, test } from 'vitest'
import { withRunner } from '../runs/runner.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { stateShares } from './stationStates.ts'
import { total, spent } from '../../../../tests/helpers/spent.ts'

test('ten shares of each station, which sum to 1', async () => {
  const line = stationLoop()
  const [rows] = await withRunner({ seed: 's', workers: 0 }, null, (runner) => runner.run([line], { from: 0, to: 4 }))
  const shares = stateShares(line, rows!)
  expect(shares.map((each) => Object.keys(each).length)).toEqual([10, 10, 10])
  for (const each of shares) expect(total(each)).toBeCloseTo(1, 9)
  expect(shares[1]!.break).toBeCloseTo(600 / 3600, 9)
})

test('no replication, no time', () => {
  const line = stationLoop()
  const layout = { station: 0, stationStride: 10 } as never
  expect(spent(stateShares(line, { layout, rows: [] })[0]!)).toEqual({})
})
