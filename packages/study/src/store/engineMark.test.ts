import { stream } from '@loopwright/stats'
import { expect, test } from 'vitest'
import { ENGINE_VERSION } from '../runs/engineVersion.ts'
import { engineMark, markWith } from './engineMark.ts'

test('version and digest: a name for a folder, the same each time', () => {
  expect(engineMark()).toMatch(/^\d+\.\d+\.\d+-[0-9a-f]{16}$/)
  expect(engineMark().startsWith(ENGINE_VERSION)).toBe(true)
  expect(engineMark()).toBe(engineMark())
})

test('a library that gives one number of a stream otherwise makes another engine', () => {
  const next = stream('mark', 0, 'mark')
  expect(markWith(next)).toBe(engineMark())
  const changed = stream('mark', 0, 'mark')
  let k = 0
  expect(markWith(() => (++k === 16 ? changed() + 2 ** -32 : changed()))).not.toBe(engineMark())
})
