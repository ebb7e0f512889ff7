import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { ENGINE_VERSION } from './engineVersion.ts'

test('is the version of the package', () => {
  const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as { version: string }
  expect(ENGINE_VERSION).toBe(version)
})
