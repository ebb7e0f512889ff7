/** A study that is killed in the middle, six times at random instants, goes on where it stopped and ends with the very bytes of an undisturbed one. */
import { spawn } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { stream } from '@loopwright/stats'
import { afterAll, expect, test } from 'vitest'
import { BIN, loopwright, runFiles } from './spawned.ts'
import { SMALL_LINE } from '../helpers/scenarioTexts.ts'

const KILLS = 6

const folder = mkdtempSync(join(tmpdir(), 'loopwright-killed-'))
afterAll(() => rmSync(folder, { recursive: true }))

const line = join(folder, 'line.yaml')
writeFileSync(line, SMALL_LINE)
const words = ['sweep', line, '--carriers', '2..7', '--replications', '150', '--seed', 'killed', '--json', '--workers', '1']

/** Kills the command a moment after the store has grown by so many files, and says whether it was still running. */
async function killed(store: string, files: number, laterMs: number): Promise<boolean> {
  const child = spawn(process.execPath, [BIN, ...words, '--store', store], { stdio: 'ignore' })
  const ended = new Promise<NodeJS.Signals | null>((resolve) => child.on('close', (_, signal) => resolve(signal)))
  const before = runFiles(store)
  const watch = setInterval(() => {
    if (runFiles(store) < before + files) return
    clearInterval(watch)
    setTimeout(() => child.kill('SIGKILL'), laterMs)
  }, 1)
  const signal = await ended
  clearInterval(watch)
  return signal === 'SIGKILL'
}

const RUNS = 6 * (150 + 15)
const allKept = (err: string): boolean => err.replaceAll('\u202f', '').includes(`${RUNS} replications (${RUNS} of them from the store)`)

test('killed six times at random: the same bytes as undisturbed; two processes at once end the same way', async () => {
  const store = join(folder, 'store')
  const undisturbed = await loopwright(...words, '--store', join(folder, 'undisturbed'))
  // The folder is there before the first kill, so that it can be watched.
  mkdirSync(store)
  const next = stream('kills', 0, 'instants')
  let kills = 0
  for (let time = 0; time < KILLS; time += 1) if (await killed(store, 1 + Math.floor(2 * next()), 30 * next())) kills += 1
  expect(kills).toBe(KILLS)
  expect(runFiles(store)).toBeGreaterThanOrEqual(KILLS)
  const both = await Promise.all([loopwright(...words, '--store', store), loopwright(...words, '--store', store)])
  for (const { out, err } of both) {
    expect(out === undisturbed.out).toBe(true)
    expect(err).toMatch(/ of them from the store\)/)
    expect(allKept(err)).toBe(false)
  }
  const again = await loopwright(...words, '--store', store)
  expect(again.out === undisturbed.out).toBe(true)
  expect(allKept(again.err)).toBe(true)
  expect(again.err).not.toContain('damaged')
})
