import { toGrid } from '@loopwright/kernel'
import { expect, test } from 'vitest'
import { CLOCK_STEP } from './clockStep.ts'

test('it is the shortest time that the clock knows', () => {
  expect(toGrid(CLOCK_STEP)).toBe(CLOCK_STEP)
  expect(toGrid(0.49 * CLOCK_STEP)).toBe(0)
})
