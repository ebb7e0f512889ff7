import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { CANARIES } from './canaries.ts'
import { bundleEngine } from './engines.ts'
import type { ShiftReport } from './shift.ts'

const folder = mkdtempSync(join(tmpdir(), 'loopwright-canary-'))
afterAll(() => rmSync(folder, { recursive: true }))
const scenarios = new URL('../../scenarios', import.meta.url).pathname

async function soak(name: string, seconds: number, canary: (typeof CANARIES)[number] | null): Promise<ShiftReport> {
  const file = join(folder, `${name}.mjs`)
  await bundleEngine(file, canary)
  const done = spawnSync(process.execPath, [file, String(seconds), '1', scenarios], { encoding: 'utf8' })
  if (done.status !== 0) throw new Error(done.stderr)
  return JSON.parse(done.stdout) as ShiftReport
}

describe('a short soak', () => {
  test('finds nothing in the engine as it is', async () => {
    const { found, checked } = await soak('engine', 5, null)
    expect(found).toBeNull()
    for (const count of Object.values(checked)) expect(count).toBeGreaterThan(0)
  }, 60_000)

  test.each(CANARIES.map((canary, index) => [canary.name, index] as const))(
    'finds: %s',
    async (_, index) => {
      const { found } = await soak(`canary-${index}`, 60, CANARIES[index]!)
      expect(found).not.toBeNull()
    },
    90_000,
  )

  test('a canary whose place is gone is an error', async () => {
    const gone = { ...CANARIES[0]!, find: 'this stands nowhere' }
    await expect(bundleEngine(join(folder, 'gone.mjs'), gone)).rejects.toThrow('stands 0 times')
  })
})
