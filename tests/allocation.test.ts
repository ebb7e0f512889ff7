/**
 * The event loop allocates nothing per event: two million events leave a place of 1 MB for young objects, empty before them, without a scavenge, so that less than half
 * a byte is allocated an event (what is done seldom is left to the interpreter, which boxes). Counted, not timed.
 */
import { spawnSync } from 'node:child_process'
import { expect, test } from 'vitest'
import { GENERAL_LINES } from './bench/generalLines.ts'
import { inOneFile } from './helpers/inOneFile.ts'

const FILE = inOneFile('tests/bench/allocation.ts')
// code is made fast at once, not on another thread whenever that is free: what is allocated before then is the interpreter's
const FLAGS = ['--trace-gc', '--expose-gc', '--max-semi-space-size=1', '--no-concurrent-recompilation', FILE]

test.each(Object.keys(GENERAL_LINES))('two million events without a scavenge: %s', (name) => {
  const done = spawnSync(process.execPath, [...FLAGS, name], { encoding: 'utf8' })
  expect(done.status, done.stderr).toBe(0)
  const lines = done.stdout.split('\n')
  const [from, to] = [lines.indexOf('from here'), lines.indexOf('to here')]
  expect(from).toBeGreaterThan(0)
  expect(to).toBeGreaterThan(from)
  // seen to count: starting the program scavenges
  expect(lines.slice(0, from).some((line) => line.includes('Scavenge'))).toBe(true)
  expect(lines.slice(from, to).filter((line) => line.includes('Scavenge'))).toEqual([])
})
