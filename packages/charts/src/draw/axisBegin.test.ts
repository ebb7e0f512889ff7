import { expect, test } from 'vitest'
import { axisBegin, axisStep } from './axisBegin.ts'

test('below all marks there is a round number, with room', () => {
  expect(axisBegin(260, 358, 0.15)).toBe(200)
  expect(axisBegin(260, 358, 0)).toBe(250)
})

test('marks that reach down to less than half begin at 0', () => {
  expect(axisBegin(178, 358, 0.15)).toBe(0)
  expect(axisBegin(0, 1, 0.15)).toBe(0)
})

test('marks of one height lie within the axis, whatever the height', () => {
  for (const units of [1, 2, 24, 25, 142, 1e6]) {
    expect(axisBegin(units, units, 0.15)).toBeLessThan(units)
    expect(units - axisBegin(units, units, 0.15)).toBeLessThanOrEqual(axisStep(units, units))
  }
})
