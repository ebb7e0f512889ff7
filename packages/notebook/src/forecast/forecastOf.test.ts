import { sweepCarriers } from '@loopwright/study'
import { expect, test } from 'vitest'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { forecastOf } from './forecastOf.ts'

test('of a line where nothing is left to chance one run tells all: the shift and the week have their number', async () => {
  const { line } = testLine()
  const sweep = await sweepCarriers(line, { counts: [4], replications: 8 }, { seed: '1', workers: 0 })
  const one = { ...sweep, chance: false, counts: [{ ...sweep.counts[0]!, units: [310] }] }
  const { shift, week } = forecastOf({ line, plan: null }, one, 5)
  expect([shift.mean!.mean, week.mean!.mean, week.units]).toEqual([310, 1550, [1550]])
  // the same number by chance says nothing of a mean
  expect(forecastOf({ line, plan: null }, { ...one, chance: true }, 5).shift.mean).toBeNull()
})
