/**
 * Lines and wrong scenarios at random, until the time is over: `npm run soak [-- --minutes 30] [-- --seed 1]`. Ends with 1 where something is found, and says how
 * to see it again. `npm run soak -- --canaries` puts deliberately broken engines in its place and says how long each took to be found.
 */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { typedOption } from '../helpers/typedOption.ts'
import { CANARIES } from './canaries.ts'
import { engines } from './engines.ts'
import type { ShiftReport } from './shift.ts'

/** seconds that a canary has to be found in */
const CANARY_SECONDS = 120

function option(name: string, otherwise: number): number {
  const value = process.argv.includes(`--${name}`) ? Number(typedOption(name)) : otherwise
  if (!Number.isFinite(value) || value <= 0) throw new Error(`--${name} needs a number above 0`)
  return value
}

function shift(file: string, seconds: number, seed: number): ShiftReport {
  const folder = fileURLToPath(new URL('../../scenarios', import.meta.url))
  const done = spawnSync(process.execPath, [file, String(seconds), 'Infinity', String(seed), folder], {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  if (done.status !== 0) throw new Error(`the soak failed with ${done.status ?? done.signal}`)
  return JSON.parse(done.stdout) as ShiftReport
}

const seed = option('seed', 1)
const { bundle, end } = await engines()
const folder = mkdtempSync(join(tmpdir(), 'loopwright-soak-'))
try {
  const file = join(folder, 'soak.mjs')
  if (process.argv.includes('--canaries')) {
    for (const canary of CANARIES) {
      await bundle(file, canary)
      const { found, seconds, checked } = shift(file, CANARY_SECONDS, seed)
      const count = Object.values(checked).reduce((a, b) => a + b)
      if (found === null) process.exitCode = 1
      const told = found === null ? `NOT FOUND in ${seconds.toFixed(0)} s` : `found in ${seconds.toFixed(1)} s, case ${count}`
      process.stdout.write(`${told.padEnd(30)} ${canary.name}\n`)
    }
  } else {
    const minutes = option('minutes', 30)
    await bundle(file, null)
    const { found, seconds, checked } = shift(file, minutes * 60, seed)
    for (const [kind, count] of Object.entries(checked)) process.stdout.write(`${String(count).padStart(8)}  ${kind}\n`)
    if (found === null) process.stdout.write(`nothing found in ${(seconds / 60).toFixed(1)} min, seed ${seed}\n`)
    else {
      process.exitCode = 1
      process.stdout.write(`FOUND with ${found.kind}, number ${found.number}: ${found.what}\n${found.shown}\n`)
    }
  }
} finally {
  await end()
  rmSync(folder, { recursive: true })
}
