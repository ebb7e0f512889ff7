import { readFileSync } from 'node:fs'
import { readScenario } from '@loopwright/scenario'
import { expect, test } from 'vitest'
import { lineFigures } from './lineFigures.ts'

test('of the base line: 15 m/min, zones of 1.5 m, carriers of 1.2 m', () => {
  const text = readFileSync(new URL('../../../../scenarios/outdoor-unit-base-line.yaml', import.meta.url), 'utf8')
  const figures = lineFigures(readScenario(text).scenario!.line)
  expect(figures).toMatchObject({
    speed: 0.25,
    acceleration: 0.4,
    zoneLength: 1.5,
    carrierLength: 1.2,
    sensorBeforeStop: 0.078125,
    reactionSeconds: 0.15,
    byHand: false,
  })
  expect(figures.standingGap).toBeCloseTo(0.3, 12)
})

test('a line that is pushed by hand has no drive to ask', () => {
  const text = readFileSync(new URL('../../../../tests/told/lines/hand-line.yaml', import.meta.url), 'utf8')
  expect(lineFigures(readScenario(text).scenario!.line)).toMatchObject({ byHand: true })
})
