import { spawnSync } from 'node:child_process'
import { mkdirSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { engineMark } from '@loopwright/study/machine'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'

/** below the packages that the bundle leaves outside */
const folder = join('node_modules/.cache', `loopwright-test-${process.pid}`)
const built = (...words: string[]) =>
  spawnSync(process.execPath, [join(folder, 'cli.js'), ...words], { encoding: 'utf8', maxBuffer: 2 ** 28 })
/** files of compiled code, as Node keeps them (folder `compiled`) or, before its version 22, the command itself */
const kept = (): string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && (entry.name.endsWith('.cache') || entry.parentPath.includes('compiled')))
    .map((entry) => join(entry.parentPath, entry.name))
    .sort()

beforeAll(async () => {
  mkdirSync(folder, { recursive: true })
  const { bundle } = (await import(pathToFileURL('packages/cli/bin/bundle.js').href)) as { bundle: (folder: string) => Promise<void> }
  await bundle(folder)
})
afterAll(() => rmSync(folder, { recursive: true }))

// a line whose runs take no time: what is looked at is how they are loaded
const WORDS = [
  'sweep',
  'tests/helpers/scenarios/small.yaml',
  '--carriers',
  '3..4',
  '--replications',
  '25',
  '--json',
  '--fresh',
  '--workers',
  '1',
]

describe('the bundle', () => {
  test('gives the same bytes with and without code kept from an earlier run, and where what was kept is damaged', () => {
    const first = built(...WORDS)
    expect(first.status).toBe(0)
    expect(first.stderr).toContain('so far, after 10 runs of each')
    expect(kept()).toHaveLength(2)
    const sizes = kept().map((file) => readFileSync(file).length)
    expect(built(...WORDS).stdout === first.stdout).toBe(true)
    for (const [index, file] of kept().entries()) truncateSync(file, Math.floor(sizes[index]! / 2))
    expect(built(...WORDS).stdout === first.stdout).toBe(true)
    expect(kept().map((file) => readFileSync(file).length / 1e6)).toEqual(sizes.map((size) => expect.closeTo(size / 1e6, 1)))
  })

  test('is the same engine as the source that it is made of: each takes the runs of the other', async () => {
    const { engineMark: ofBundle } = (await import(
      pathToFileURL(join(folder, 'study/machine.js')).href
    )) as typeof import('@loopwright/study/machine')
    expect(ofBundle()).toBe(engineMark())
  })

  test('finds one wrong bit in kept code, and makes it anew', () => {
    const first = built(...WORDS)
    const spoilt = kept().map((file) => {
      const bytes = readFileSync(file)
      bytes[Math.floor(bytes.length / 2)]! ^= 1
      writeFileSync(file, bytes)
      return bytes
    })
    expect(spoilt).toHaveLength(2)
    expect(built(...WORDS).stdout === first.stdout).toBe(true)
    for (const [index, file] of kept().entries()) expect(readFileSync(file).equals(spoilt[index]!)).toBe(false)
  })

  test('writes a page and runs a notebook, whose packages are its own', () => {
    const page = join(folder, 'page.html')
    const words = ['notebook', 'notebooks/how-many-carriers.ts', '--replications', '2', '--fresh', '--out', page]
    const { status, stderr } = built(...words)
    expect(stderr).not.toContain('failed')
    expect(status).toBe(0)
    expect(readFileSync(page, 'utf8')).toMatch(/^<!doctype html>/i)
  })
})
