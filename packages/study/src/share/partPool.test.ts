import { describe, expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { chooseCarriers } from '../carriers/chooseCarriers.ts'
import { compareLines } from '../compare/compareLines.ts'
import { memoryStore } from '../store/memoryStore.ts'
import type { Store } from '../store/store.ts'
import { sweepCarriers } from '../sweep/sweepCarriers.ts'
import { callingThread } from '../runs/callingThread.ts'
import { isOthersShare } from './othersShare.ts'
import { partPool } from './partPool.ts'
import type { Pool } from '../runs/pool.ts'
import { replicate } from '../runs/replicate.ts'
import type { StudyOptions } from '../runs/studyOptions.ts'

/** One round of every share, on one store; how many runs each did. */
async function round(shares: number, store: Store, study: (options: StudyOptions) => Promise<unknown>): Promise<number[]> {
  const runs: number[] = []
  for (let part = 1; part <= shares; part += 1) {
    const pool = partPool(callingThread(), { part, of: shares })
    try {
      await study({ seed: '3', pool, store })
    } catch (error) {
      if (!isOthersShare(error)) throw error
    }
    runs.push(pool.report.run)
  }
  return runs
}

const TWO = [
  { name: 'a', line: stationLoop(), plan: null },
  { name: 'b', line: stationLoop({ carriers: { ...stationLoop().carriers, count: 2 } }), plan: null },
]

describe('shares of a study', () => {
  test('are all of it, none twice, about as much for each', async () => {
    const spec = stationLoop()
    const outputs = async (options: StudyOptions): Promise<number[]> =>
      (await replicate(spec, { replications: 83 }, options)).map(({ output }) => output)
    const reports = await Promise.all(
      [1, 2, 3, 4].map(async (part) => {
        const pool = partPool(callingThread(), { part, of: 4 })
        const store = memoryStore()
        await expect(outputs({ seed: '3', pool, store })).rejects.toThrow('other shares')
        expect(store.report.kept).toBe(pool.report.run)
        return pool.report
      }),
    )
    expect(reports.reduce((sum, { run }) => sum + run, 0)).toBe(83)
    for (const { run, left } of reports) {
      expect(run + left).toBe(83)
      expect(run).toBeGreaterThanOrEqual(15)
      expect(run).toBeLessThanOrEqual(25)
    }
  })

  test.each([
    ['runs', (options: StudyOptions) => replicate(stationLoop(), { replications: 30 }, options)],
    ['a sweep', (options: StudyOptions) => sweepCarriers(stationLoop(), { counts: [2, 3, 4], replications: 20 }, options)],
    ['a comparison', (options: StudyOptions) => compareLines(TWO, { replications: 12 }, options)],
    ['a study that decides as it goes', (options: StudyOptions) => chooseCarriers(stationLoop(), { counts: [2, 3, 4] }, options)],
  ])('put together give the bits of one machine: %s', async (_, study) => {
    const whole = await study({ seed: '3', workers: 0 })
    const store = memoryStore()
    for (let rounds = 0; (await round(3, store, study)).some((runs) => runs > 0); rounds += 1) expect(rounds).toBeLessThan(40)
    let fresh = 0
    const pool = callingThread()
    const counted: Pool = {
      ...pool,
      run: (thread, task) => {
        fresh += 1
        return pool.run(thread, task)
      },
    }
    expect(JSON.stringify(await study({ seed: '3', pool: counted, store }))).toBe(JSON.stringify(whole))
    expect(fresh).toBe(0)
  })

  test('that are none are refused', () => {
    for (const share of [
      { part: 0, of: 2 },
      { part: 3, of: 2 },
      { part: 1.5, of: 2 },
      { part: 1, of: 0 },
    ])
      expect(() => partPool(callingThread(), share)).toThrow(RangeError)
  })
})
