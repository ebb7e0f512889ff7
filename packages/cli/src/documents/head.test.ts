import { law, workingSeconds } from '@loopwright/line/bounds'
import { expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { lawDocument } from './head.ts'

test('the law tells what its rate is to be multiplied by, of whatever study', () => {
  const line = stationLoop()
  const found = law(line)
  expect(lawDocument(found, line)).toMatchObject({ unitsPerWindowFactor: found.unitsPerLap * workingSeconds(line) })
  expect(found.unitsPerLap * workingSeconds(line)).toBeGreaterThan(0)
  expect(lawDocument(null, line)).toBeNull()
})
