import { sweepCarriers } from '@loopwright/study'
import { expect, test } from 'vitest'
import { testLine } from '../../../../tests/helpers/scenarioTexts.ts'
import { period } from '../sweep/period.ts'
import { limitedBy } from './limitedBy.ts'

const scenario = testLine((text) => text.replace(/stops:[\s\S]*/, ''))
const words = period(scenario)
const counts = (await sweepCarriers(scenario.line, { counts: [1, 4], replications: 3 }, { seed: '1', workers: 0 })).counts

test('with enough carriers the slowest station limits the loop, with one it is the carrier', () => {
  expect(limitedBy(scenario, counts[1]!, words)!.markdown).toMatch(/^What limits the line: S3 Test, which can do about/)
  expect(limitedBy(scenario, counts[0]!, words)!.markdown).toMatch(/^What limits the line: 1 carrier, as said above; the line makes/)
})

test('nothing is said of runs that stood still, nor without a run', () => {
  expect(limitedBy(scenario, { ...counts[1]!, gridlocks: 1 }, words)).toBeNull()
  expect(limitedBy(scenario, { ...counts[1]!, replications: 0 }, words)).toBeNull()
})
