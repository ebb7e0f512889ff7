import { lawOrNull } from '@loopwright/line/bounds'
import { expect, test } from 'vitest'
import { blockLoop } from '../../../../tests/bench/lines.ts'
import { OPEN_LINE, scenarioOf } from '../../../../tests/helpers/scenarioTexts.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { answerBytes, jobChunk } from './jobChunk.ts'

test('short runs go by fifty, long ones by fewer, never none', () => {
  const spec = stationLoop()
  expect(jobChunk(spec, 3)).toBe(50)
  const longer = (times: number): number => jobChunk({ ...spec, window: { ...spec.window, endSeconds: spec.window.endSeconds * times } }, 3)
  expect(longer(1000)).toBeLessThan(50)
  expect(longer(1000)).toBeGreaterThan(0)
  expect(longer(1e7)).toBe(1)
})

test('of a line without a law as of others: by the events that are to be expected', () => {
  const { line } = scenarioOf(OPEN_LINE)
  expect(lawOrNull(line)).toBeNull()
  expect(jobChunk(line, line.carriers.count)).toBe(50)
  const { window } = line
  expect(jobChunk({ ...line, window: { ...window, endSeconds: 100 * window.endSeconds } }, line.carriers.count)).toBe(6)
})

test('does not grow with the carriers, and keeps an answer below 4 MB', () => {
  const big = blockLoop(40, 1)
  expect(jobChunk(big, 20)).toBeGreaterThanOrEqual(jobChunk(big, 200))
  expect(jobChunk(big, 20) * answerBytes(big)).toBeLessThanOrEqual(4e6)
})
