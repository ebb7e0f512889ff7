import { expect, test } from 'vitest'
import { engineCode } from './engineCode.ts'

test('sixteen digits, the same each time', () => {
  expect(engineCode()).toMatch(/^[0-9a-f]{16}$/)
  expect(engineCode()).toBe(engineCode())
})
