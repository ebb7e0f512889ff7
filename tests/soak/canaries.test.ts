import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { CANARIES } from './canaries.ts'
import { KINDS } from './checks.ts'
import { type Engines, engines } from './engines.ts'
import type { ShiftReport } from './shift.ts'

const folder = mkdtempSync(join(tmpdir(), 'loopwright-canary-'))
let made: Engines
beforeAll(async () => {
  made = await engines()
})
afterAll(async () => {
  await made.end()
  rmSync(folder, { recursive: true })
})
const scenarios = fileURLToPath(new URL('../../scenarios', import.meta.url))

/** by which each canary is found in ten cases of its kind: those of one seed are the same on a slow machine */
const SEED = 16
/** so many cases, of which those of one kind are checked: twice as many as the hardest canary takes */
const CASES = 80
/** of each kind of case of an engine without a fault, more than the hardest canary takes; `npm run soak` runs as many as one likes */
const SOUND_CASES = 12

async function soak(name: string, cases: number, canary: (typeof CANARIES)[number] | null, small = true): Promise<ShiftReport> {
  const file = join(folder, `${name}.mjs`)
  await made.bundle(file, canary)
  const words = [
    file,
    'Infinity',
    String(cases),
    String(SEED),
    scenarios,
    small ? 'made small' : 'as found',
    ...(canary === null ? [] : [canary.foundBy]),
  ]
  const { status, stdout, stderr } = spawnSync(process.execPath, words, { encoding: 'utf8' })
  if (status !== 0) throw new Error(stderr)
  return JSON.parse(stdout) as ShiftReport
}

describe('a short soak', () => {
  test('finds nothing in the engine as it is', async () => {
    const { found, checked } = await soak('engine', SOUND_CASES * KINDS.length, null)
    expect(found).toBeNull()
    for (const count of Object.values(checked)) expect(count).toBe(SOUND_CASES)
  })

  test.each(CANARIES.map((canary, index) => [canary.name, index] as const))('finds: %s', async (_, index) => {
    // one of them is enough to see that what is found is made small
    const small = index === 0
    const { found } = await soak(`canary-${index}`, CASES, CANARIES[index]!, small)
    expect(found).not.toBeNull()
    if (small) expect(JSON.parse(found!.shown).stations.length).toBeLessThanOrEqual(2)
  })

  test('a canary whose place is gone is an error', async () => {
    const gone = { ...CANARIES[0]!, find: 'this stands nowhere' }
    await expect(made.bundle(join(folder, 'gone.mjs'), gone)).rejects.toThrow('stands 0 times')
  })
})
