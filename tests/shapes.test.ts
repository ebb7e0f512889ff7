/**
 * Code is compiled for the shapes of objects that it has met, and thrown away when another comes: a run changes the shape of no object of the line, and the next
 * line is built with the same ones. In processes of their own, since shapes are there to stay.
 */
import { spawnSync } from 'node:child_process'
import { expect, test } from 'vitest'
import { GENERAL_LINES } from './bench/generalLines.ts'
import { inOneFile } from './helpers/inOneFile.ts'

const FILE = inOneFile('tests/bench/shapes.ts')

test.each(Object.keys(GENERAL_LINES))('no object changes its shape: %s', (name) => {
  const done = spawnSync(process.execPath, ['--allow-natives-syntax', FILE, name], { encoding: 'utf8' })
  expect(done.status, done.stderr).toBe(0)
  // seen to tell shapes apart
  expect(done.stdout.trim().split('\n')).toEqual(['false true'])
})
