import { expect, test } from 'vitest'
import { ENGINE_VERSION } from '../runs/engineVersion.ts'
import { engineMark } from './engineMark.ts'

test('version and digest: a name for a folder, the same each time', () => {
  expect(engineMark()).toMatch(/^\d+\.\d+\.\d+-[0-9a-f]{16}$/)
  expect(engineMark().startsWith(ENGINE_VERSION)).toBe(true)
  expect(engineMark()).toBe(engineMark())
})
