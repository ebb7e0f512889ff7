import { lineLimits } from '@loopwright/line/bounds'
import { expect, test } from 'vitest'
import { limitWarnings } from './limitWarnings.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'

const line = stationLoop()
const [jam] = line.breakdowns
const mean = (seconds: number) => ({ kind: 'exponential', mean: seconds }) as const

test('a plan above the slowest limit, and none below it', () => {
  const [first] = lineLimits(line)
  expect(limitWarnings(line, first!.unitsPerWindow + 1)).toEqual([
    { code: 'plan above a limit', plan: first!.unitsPerWindow + 1, limit: first },
  ])
  expect(limitWarnings(line, first!.unitsPerWindow)).toEqual([])
  expect(limitWarnings(line, null)).toEqual([])
})

test('stops that last longer than the time between them, those with the same times as one', () => {
  const often = { ...jam!, timeToFailureSeconds: mean(45), repairSeconds: mean(180) }
  const found = limitWarnings({ ...line, breakdowns: [jam!, often, { ...often, name: 'other' }] }, null)
  expect(found).toEqual([
    {
      code: 'stops longer than the time between them',
      sources: ['jam', 'other'],
      clock: 'operating',
      timeToFailureSeconds: 45,
      repairSeconds: 180,
      availabilityShare: 0.2,
    },
  ])
})

test('more events in a run than the lines of people have', () => {
  const often = { ...jam!, clock: 'calendar' as const, timeToFailureSeconds: mean(1e-5), repairSeconds: mean(1e-5) }
  expect(limitWarnings({ ...line, breakdowns: [often] }, null)).toEqual([{ code: 'many events', events: expect.any(Number) }])
})
