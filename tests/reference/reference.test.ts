import { spawnSync } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { docsOf } from '../surface/docsOf.ts'
import { filesUnder, TOP } from '../tidy/sources.ts'

test('the pages of reference are made without a warning, and each public function has one', { tags: 'long' }, () => {
  const folder = mkdtempSync(join(tmpdir(), 'reference '))
  try {
    const words = [join(TOP, 'node_modules/typedoc/bin/typedoc'), '--out', folder]
    const { status, stdout, stderr } = spawnSync(process.execPath, words, {
      cwd: TOP,
      encoding: 'utf8',
      env: { ...process.env, NO_COLOR: '1' },
    })
    expect([status, stdout + stderr]).toEqual([0, expect.not.stringMatching(/\[(warning|error)\]/)])
    const pages = readdirSync(join(folder, 'functions'))
    const functions = filesUnder('packages', /^index\.ts$/).flatMap(({ file }) => docsOf(file).filter(({ kind }) => kind === 'function'))
    const named = (name: string): boolean => pages.some((page) => page.endsWith(`.${name}.html`))
    expect(functions.length).toBeGreaterThan(100)
    expect(functions.map(({ name }) => name).filter((name) => !named(name))).toEqual([])
    const sample = pages.find((page) => page.endsWith('.sweepCarriers.html'))!
    expect(readFileSync(join(folder, 'functions', sample), 'utf8')).toContain('Example')
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
})
