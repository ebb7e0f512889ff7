import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { replicate } from '@loopwright/study'
import { engineMark } from '@loopwright/study/machine'
import { expect, test } from 'vitest'
import { storeOfThisEngine } from './keptRuns.ts'
import { stationLoop } from './stationLoop.ts'

test('a run from the store is the run, and runs of another engine are neither given nor left', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'kept-'))
  try {
    const outputs = (store: ReturnType<typeof storeOfThisEngine> | null) =>
      replicate(stationLoop(), { replications: 3 }, { seed: 'kept', workers: 0, store })
    const fresh = await outputs(null)
    expect(await outputs(storeOfThisEngine(folder))).toEqual(fresh)
    const [key] = readdirSync(join(folder, engineMark()), { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.runs'))
    const other = join(folder, '0.0.1-0123456789abcdef', key!, '..')
    mkdirSync(other, { recursive: true })
    writeFileSync(join(folder, '0.0.1-0123456789abcdef', key!), 'other numbers')
    const again = storeOfThisEngine(folder)
    expect(readdirSync(folder)).toEqual([engineMark()])
    expect(await outputs(again)).toEqual(fresh)
    expect(again.report).toMatchObject({ recalled: 3, kept: 0 })
  } finally {
    rmSync(folder, { recursive: true })
  }
})
