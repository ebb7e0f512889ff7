import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { TOP } from '../tidy/sources.ts'
import { PACKAGES } from './packing.ts'

const manifest = (folder: string) =>
  JSON.parse(readFileSync(join(TOP, folder, 'package.json'), 'utf8')) as { version: string; dependencies?: Record<string, string> }

test('all packages have one version, which the newest heading of the list of versions names', () => {
  const { version } = manifest('.')
  expect(version).toMatch(/^\d+\.\d+\.\d+$/)
  expect(PACKAGES.map((name) => manifest(`packages/${name}`).version)).toEqual(PACKAGES.map(() => version))
  const headings = readFileSync(join(TOP, 'packages/CHANGELOG.md'), 'utf8').match(/(?<=^## ).*$/gm)
  expect(headings?.[0]).toBe(version)
})

test('packages ask for each other by that very version, and for others by an exact one', () => {
  const wrong = PACKAGES.flatMap((name) =>
    Object.entries(manifest(`packages/${name}`).dependencies ?? {})
      .filter(([of, wanted]) => !/^\d+\.\d+\.\d+$/.test(wanted) || (of.startsWith('@loopwright/') && wanted !== manifest('.').version))
      .map(([of, wanted]) => `${name}: ${of} ${wanted}`),
  )
  expect(wrong).toEqual([])
})
