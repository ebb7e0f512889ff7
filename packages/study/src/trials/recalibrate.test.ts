import { expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { replicate } from '../runs/replicate.ts'
import { recalibrate } from './recalibrate.ts'
import { longerWork } from './runTrials.ts'

const options = { seed: '1', workers: 0 }

test('the factor that made the counts is found again', async () => {
  const line = stationLoop()
  const real = await replicate(longerWork(line, 1.2), { replications: 4 }, options)
  const counted = real.reduce((sum, { output }) => sum + output, 0) / 4
  const { factor, found, units } = await recalibrate(line, { units: counted, replications: 4 }, options)
  expect(found).toBe(true)
  expect(Math.abs(factor - 1.2)).toBeLessThan(0.03)
  expect(Math.abs(units / counted - 1)).toBeLessThan(0.02)
})

test('an output that no factor gives is not found', async () => {
  expect(await recalibrate(stationLoop(), { units: 10_000, replications: 2 }, options)).toMatchObject({ found: false, factor: 0.6 })
})
