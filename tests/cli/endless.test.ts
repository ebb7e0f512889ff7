/** Runs that would take years: Ctrl-C ends each command by 130, also where the calling thread runs them; what takes no time at all is said. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { TOP } from '../tidy/sources.ts'
import { start } from './spawned.ts'

const folder = mkdtempSync(join(tmpdir(), 'loopwright-endless-'))
afterAll(() => rmSync(folder, { recursive: true }))

/** The ring of the tests with something changed. */
function ring(name: string, from: string, to: string): string {
  const text = readFileSync(join(TOP, 'tests/helpers/scenarios/ring.yaml'), 'utf8')
  expect(text).toContain(from)
  const file = join(folder, `${name}.yaml`)
  writeFileSync(file, text.replace(from, to))
  return file
}

const arrivals = ring('arrivals', 'drive:', 'supply: { every: exponential 0.1 ms }\ndrive:')
const often = ring('often', 'after: exponential 40 min, lasts: exponential 60 s', 'after: exponential 0.1 ms, lasts: exponential 0.1 ms')
const never = ring('never', 'after: exponential 40 min, lasts: exponential 60 s', 'after: exponential 1e-7 ms, lasts: exponential 1e-7 ms')

describe('stopped in the middle', () => {
  test.each([
    ['run', arrivals],
    ['run', often, '--engine', 'events'],
    ['run', arrivals, '--replications', '3', '--workers', '2'],
    ['sweep', arrivals, '--carriers', '3..5', '--replications', '5'],
  ])('%s %s %s', async (...words) => {
    const running = start(words)
    await running.saidOnErr('seed 1')
    setTimeout(running.interrupt, 300)
    const { code, err } = await running.ended
    expect(err).not.toContain('defect')
    expect(code).toBe(130)
  })
})

test('no time at all: what is wrong and what to do, and a code for wrong use', async () => {
  const { code, err } = await start(['run', never, '--engine', 'events', '--yes']).ended
  expect(err.replace(/\s+/g, ' ')).toContain('the clock does not go on: some stop, supply or work takes no time')
  expect(code).toBe(2)
})

test('hours of work are counted before they are begun; --yes begins them', async () => {
  const words = ['run', often, '--replications', '3000', '--engine', 'events']
  const { code, err } = await start(words).ended
  expect(err.replace(/\s+/g, ' ')).toMatch(/this asks for about [\d.]+·10¹² events, [\d.]+ hours of a core: .* \(--yes\)/)
  expect(code).toBe(2)
  const running = start([...words, '--yes'])
  await running.saidOnErr('seed 1')
  setTimeout(running.interrupt, 300)
  expect((await running.ended).code).toBe(130)
})
