import { readScenario } from '@loopwright/scenario'
import { expect, test } from 'vitest'
import { RING } from '../../../../tests/helpers/scenarioTexts.ts'
import { tooMany } from './tooMany.ts'

test('lines of people are simulated; one whose stops come ten thousand times a second is refused with what it asks for', () => {
  const { line } = readScenario(RING).scenario!
  expect(tooMany(line)).toBeNull()
  const mean = { kind: 'exponential', mean: 1e-4 } as const
  const often = line.breakdowns.map((each) => ({ ...each, timeToFailureSeconds: mean, repairSeconds: mean }))
  expect(tooMany({ ...line, breakdowns: often })).toMatch(
    /^One run of this asks for about [\d.]+·10⁸ events, [\d.]+ s of a core, more than a page simulates/,
  )
})
