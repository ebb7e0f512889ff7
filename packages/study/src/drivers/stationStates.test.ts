import { STATION_STATES } from '@loopwright/line'
import { expect, test } from 'vitest'
import { hereRunner } from '../runs/runner.ts'
import { smallLoop } from '../smallLoop.ts'
import { shareOf, stateShares } from './stationStates.ts'

test('ten shares of each station, which sum to 1', async () => {
  const line = smallLoop()
  const [rows] = await hereRunner().run([line], { seed: 's', from: 0, to: 4 })
  const shares = stateShares(line, rows!)
  expect(shares.map((each) => each.length)).toEqual([10, 10, 10])
  for (const each of shares) expect(each.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9)
  expect(shareOf(shares, 1, 'break')).toBeCloseTo(600 / 3600, 9)
  expect(shareOf(shares, 1, 'working')).toBe(shares[1]![STATION_STATES.indexOf('working')])
})

test('no replication, no time', () => {
  const line = smallLoop()
  const layout = { station: 0, stationStride: 10 } as never
  expect(stateShares(line, { layout, rows: [] })[0]).toEqual(new Array(10).fill(0))
})
