/** The event loop allocates nothing per event: no scavenge of young objects between event 100,000 and 1,100,000. Counted, not timed. */
import { spawnSync } from 'node:child_process'
import { expect, test } from 'vitest'

test('a million events without a scavenge', () => {
  const file = new URL('./bench/allocation.ts', import.meta.url).pathname
  const done = spawnSync(process.execPath, ['--trace-gc', '--conditions=loopwright-source', '--import', 'tsx', file], { encoding: 'utf8' })
  expect(done.status).toBe(0)
  const lines = done.stdout.split('\n')
  const [from, to] = [lines.indexOf('from here'), lines.indexOf('to here')]
  expect(from).toBeGreaterThan(0)
  expect(to).toBeGreaterThan(from)
  // seen to count: starting the program scavenges
  expect(lines.slice(0, from).some((line) => line.includes('Scavenge'))).toBe(true)
  expect(lines.slice(from, to).filter((line) => line.includes('Scavenge'))).toEqual([])
})
