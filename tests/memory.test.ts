/** Memory does not grow with simulated time: of the draws only those are kept that a product in the line may still ask for. Counted, not timed. */
import { spawnSync } from 'node:child_process'
import { expect, test } from 'vitest'
import { inOneFile } from './helpers/inOneFile.ts'

interface Used {
  readonly outputs: number
  readonly heapUsed: number
  readonly arrayBuffers: number
}

const FILE = inOneFile('tests/bench/memory.ts')

function used(...words: string[]): Used {
  const done = spawnSync(process.execPath, ['--expose-gc', FILE, ...words], { encoding: 'utf8' })
  expect(done.stderr).toBe('')
  return JSON.parse(done.stdout) as Used
}

/** bytes by which the heap may differ between two processes; compiled code and what the compiler notes alone differ by up to 0.4 MB. 180 hours more are 210,000 moves of the block, so that four bytes for each would show */
const HEAP_TOLERANCE = 800_000
/** a result tells the instant of each output: 8 bytes, in a list that doubles, beside those that it replaces and that are not taken away yet */
const OUTPUT_BYTES = 32
/** the draws of one task kept for each output would be 8 bytes more, of all seven 56 */
const ARRAYS_TOLERANCE = 100_000

test.each([
  ['events', 'block'],
  ['recursion', 'block'],
  ['events', 'demo'],
  ['recursion', 'demo'],
])('%s, %s: ten times the hours hold the same memory, but for the instants of the outputs', (engine, line) => {
  const [short, long] = [used(engine, line, '20'), used(engine, line, '200')]
  expect(long.outputs).toBeGreaterThan(9 * short.outputs)
  expect(long.heapUsed - short.heapUsed).toBeLessThan(HEAP_TOLERANCE)
  expect(long.arrayBuffers - short.arrayBuffers).toBeLessThan(OUTPUT_BYTES * (long.outputs - short.outputs) + ARRAYS_TOLERANCE)
})
