import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { VERSION, versionLine } from './version.ts'

test('is the version of the package, and names that of the engine', () => {
  const versionOf = (name: string): string =>
    (JSON.parse(readFileSync(new URL(`../../../${name}/package.json`, import.meta.url), 'utf8')) as { version: string }).version
  expect(VERSION).toBe(versionOf('cli'))
  expect(versionLine()).toBe(`loopwright ${versionOf('cli')}, engine ${versionOf('study')}`)
})
