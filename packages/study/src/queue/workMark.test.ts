import { expect, test } from 'vitest'
import { ENGINE_VERSION } from '../runs/engineVersion.ts'
import { engineCode } from '../store/engineCode.ts'
import { checkDigest } from './checkRuns.ts'
import { whyRefused, workMark } from './workMark.ts'

test('names the code and the bits, and neither Node nor processor', () => {
  expect(workMark()).toBe(`${ENGINE_VERSION}-${engineCode()}-${checkDigest()}`)
})

test('who differs is told in what', () => {
  expect(whyRefused('1.0.0-aa-11', '1.0.0-aa-11')).toBeNull()
  expect(whyRefused('1.0.0-aa-11', '1.0.0-aa-22')).toContain('other last digits')
  expect(whyRefused('1.0.0-aa-11', '1.0.0-bb-11')).toContain('another version of the engine')
  expect(whyRefused('1.0.0-aa-11', '1.0.1-aa-11')).toContain('another version of the engine')
  expect(whyRefused('1.0.0-aa-11', 'nothing of the kind')).toContain('another version of the engine')
})
