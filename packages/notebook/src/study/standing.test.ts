import { sweepCarriers } from '@loopwright/study'
import { expect, test } from 'vitest'
import { carrierSweepStory } from '../sweep/carrierSweepStory.ts'
import { standing } from './standing.ts'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'

test('inputs and cautions are those under a sweep of the same line', async () => {
  const scenario = testLine()
  const options = { scenarioFile: 'ring.yaml' }
  const sweep = await sweepCarriers(scenario.line, { counts: [4], replications: 2 }, { seed: '1', workers: 0 })
  const story = carrierSweepStory(scenario, sweep, options)
  expect(standing(scenario, options)).toEqual({ assumptions: story.assumptions, cautions: story.cautions, live: null })
})
