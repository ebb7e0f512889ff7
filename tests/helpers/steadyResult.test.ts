import { expect, test } from 'vitest'
import { FOUND } from './steadyResult.ts'

test('the length that is enough is ten times the warm-up and the warm-up', () => {
  expect(FOUND.enoughSeconds).toBe(11 * FOUND.cutSeconds!)
})
