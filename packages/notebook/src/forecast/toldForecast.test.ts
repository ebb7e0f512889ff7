import { sweepCarriers } from '@loopwright/study'
import { expect, test } from 'vitest'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { forecastOf } from './forecastOf.ts'
import { toldForecast } from './toldForecast.ts'

const scenario = testLine()
const sweep = await sweepCarriers(scenario.line, { counts: [4], replications: 60 }, { seed: '1', workers: 0 })
const forecast = forecastOf(scenario, sweep, 5)
const { controlled } = sweep.counts[0]!

test('the mean without the luck of its worlds is told of the shift, and so many times of the week', () => {
  expect(controlled).not.toBeNull()
  const { shift, week } = toldForecast(forecast, undefined)
  expect(shift.mean).toMatchObject({ mean: controlled!.mean, halfWidth: controlled!.halfWidth })
  expect(week.mean!.mean).toBeCloseTo(5 * controlled!.mean, 9)
  expect([shift.p10, week.p90]).toEqual([forecast.shift.p10, forecast.week.p90])
})

test('plain where the reader wants it so', () => {
  const { shift, sweep: told } = toldForecast(forecast, true)
  expect(shift.mean).toEqual(forecast.shift.mean)
  expect(told.counts[0]!.controlled).toBeNull()
})
