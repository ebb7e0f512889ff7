import type { BreakdownSpec, LineSpec } from '@loopwright/line'
import { distributionMean } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { otherStops } from './otherStops.ts'

const stop = (name: string): BreakdownSpec => ({
  name,
  part: { kind: 'station', index: 0 },
  clock: 'operating',
  timeToFailureSeconds: { kind: 'exponential', mean: 3600 },
  repairSeconds: { kind: 'exponential', mean: 240 },
})
const line: LineSpec = { ...stationLoop(), breakdowns: [stop('jam'), stop('leak')] }

test('the means of the named source change by their factors, all others stay', () => {
  const { breakdowns } = otherStops(line, new Map([['jam', { between: 0.5, repair: 1.25 }]]))
  expect(distributionMean(breakdowns[0]!.timeToFailureSeconds)).toBeCloseTo(1800, 9)
  expect(distributionMean(breakdowns[0]!.repairSeconds)).toBeCloseTo(300, 9)
  expect(breakdowns[1]).toBe(line.breakdowns[1])
})
