import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { surfaceOf } from './surface/surfaceOf.ts'
import { TOP } from './tidy/sources.ts'

/** Packages with an index; `SURFACE=write npx vitest run tests/surface.test.ts` brings the kept lists up to date. */
const packages = readdirSync(join(TOP, 'packages')).filter((name) => existsSync(join(TOP, 'packages', name, 'src', 'index.ts')))

describe.each(packages)('%s', (name) => {
  const kept = join(TOP, 'tests', 'surface', `${name}.txt`)
  const index = `packages/${name}/src/index.ts`

  test('its public names are those kept beside this test', () => {
    const now = `${surfaceOf(index).join('\n')}\n`
    if (process.env.SURFACE === 'write') writeFileSync(kept, now)
    expect(now).toBe(existsSync(kept) ? readFileSync(kept, 'utf8') : '')
  })

  test('each name is found, once, and functions say what they return', () => {
    const lines = surfaceOf(index)
    expect(lines).toEqual([...lines].sort())
    expect(new Set(lines.map((line) => line.split(' ')[0])).size).toBe(lines.length)
    expect(lines.filter((line) => line.includes('not found'))).toEqual([])
  })
})

test('the command line is no library: every other package has an index', () => {
  expect(packages).toEqual(expect.arrayContaining(['charts', 'kernel', 'line', 'notebook', 'scenario', 'stats', 'study']))
})

test('no kept list is left over', () => {
  const kept = readdirSync(join(TOP, 'tests', 'surface')).filter((name) => name.endsWith('.txt'))
  expect(kept.map((name) => name.replace(/\.txt$/, '')).filter((name) => !packages.includes(name))).toEqual([])
})
