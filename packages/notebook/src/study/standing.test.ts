import { sweepHere } from '@loopwright/study'
import { expect, test } from 'vitest'
import { carrierSweepStory } from '../sweep/carrierSweepStory.ts'
import { standing } from './standing.ts'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'

test('inputs and cautions are those under a sweep of the same line', () => {
  const scenario = testLine()
  const options = { scenarioFile: 'ring.yaml' }
  const story = carrierSweepStory(scenario, sweepHere(scenario.line, [4], { seed: '1', replications: 2 }), options)
  expect(standing(scenario, options)).toEqual({ assumptions: story.assumptions, cautions: story.cautions })
})
