import { expect, test } from 'vitest'
import { openPool, workOf } from './openPool.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'

const spec = stationLoop()
/** threads that the process has */
const threads = (): number => process.getActiveResourcesInfo().filter((name) => name === 'MessagePort' || name === 'Worker').length

test('a study that is over before a thread has started runs in the calling thread', async () => {
  const before = threads()
  const { pool, close } = openPool({}, workOf(spec, [{ carriers: 3, replications: 2 }]))
  pool.start()
  expect(pool.size).toBe(1)
  const line = pool.line(spec)
  expect((await pool.run(0, { line, carriers: 3, seed: '1', from: 0, to: 2, want: 'rows' })).rows).toHaveLength(2)
  expect(threads()).toBe(before)
  await close()
})

test('a longer one, one of unknown length, and one for which threads are asked, have them', async () => {
  const long = workOf(spec, [{ carriers: 3, replications: 10_000 }])
  for (const { pool, close } of [
    openPool({ workers: 2 }, workOf(spec, [{ carriers: 3, replications: 2 }])),
    openPool({ workers: 2 }, long),
  ]) {
    expect(pool.size).toBe(2)
    await close()
  }
  const before = threads()
  const { pool, close } = openPool({}, long)
  pool.start()
  expect(threads()).toBeGreaterThan(before)
  await close()
})
