import { describe, expect, test } from 'vitest'
import { callingThread } from '../runs/callingThread.ts'
import type { Pool } from '../runs/pool.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import type { Task } from '../runs/task.ts'
import { keptPool } from './keptPool.ts'
import { memoryStore } from './memoryStore.ts'

const spec = stationLoop()
const task = { carriers: 3, seed: '2', want: 'rows' } as const

/** A pool that writes down what it is asked. */
function counting(): { pool: Pool; asked: Task[] } {
  const pool = callingThread()
  const asked: Task[] = []
  return {
    asked,
    pool: {
      ...pool,
      run: (thread, wanted) => {
        asked.push(wanted)
        return pool.run(thread, wanted)
      },
    },
  }
}

describe('a pool with a store', () => {
  test.each(['rows', 'results', 'passages'] as const)(
    'asks its threads only what is not kept, and gives the same bits: %s',
    async (want) => {
      const plain = callingThread()
      const whole = await plain.run(0, { ...task, want, line: plain.line(spec), from: 0, to: 8 })
      const store = memoryStore()
      const first = keptPool(counting().pool, store)
      await first.run(0, { ...task, want, line: first.line(spec), from: 1, to: 3 })
      await first.run(0, { ...task, want, line: first.line(spec), from: 5, to: 6 })
      const { pool, asked } = counting()
      const second = keptPool(pool, store)
      const line = second.line(stationLoop())
      expect(await second.run(0, { ...task, want, line, from: 0, to: 8 })).toEqual(whole)
      expect(asked.map(({ from, to }) => [from, to])).toEqual([
        [0, 1],
        [3, 5],
        [6, 8],
      ])
      expect(second.recalled).toBe(3)
      expect(await second.run(0, { ...task, want, line, from: 2, to: 4 })).toEqual({ ...whole, [want]: whole[want].slice(2, 4) })
      expect(asked).toHaveLength(3)
    },
  )

  test('takes nothing from another seed, count, line or form', async () => {
    const store = memoryStore()
    const { pool, asked } = counting()
    const kept = keptPool(pool, store)
    const line = kept.line(spec)
    const other = kept.line(stationLoop({ reactionSeconds: 0.5 }))
    const one = { ...task, line, from: 0, to: 1 }
    for (const wanted of [
      one,
      { ...one, seed: '3' },
      { ...one, carriers: 4 },
      { ...one, line: other },
      { ...one, want: 'results' as const },
    ])
      await kept.run(0, wanted)
    expect(asked).toHaveLength(5)
  })

  test('leaves traces alone', async () => {
    const store = memoryStore()
    const kept = keptPool(callingThread(), store)
    expect((await kept.run(0, { ...task, line: kept.line(spec), want: 'traces', from: 0, to: 1 })).traces).toHaveLength(1)
    expect(store.report.kept).toBe(0)
  })

  test('drops what has the wrong length, and runs it again', async () => {
    const store = memoryStore()
    const kept = keptPool(callingThread(), store)
    const one = { ...task, line: kept.line(spec), from: 0, to: 2 }
    const right = await kept.run(0, one)
    const wrong = {
      ...store,
      get report() {
        return store.report
      },
      read: (key: string) => store.read(key).map((entry) => ({ ...entry, bytes: entry.bytes.slice(8) })),
    }
    const { pool, asked } = counting()
    const again = keptPool(pool, wrong)
    again.line(spec)
    expect(await again.run(0, one)).toEqual(right)
    expect(asked).toHaveLength(1)
    expect(store.report.damaged).toBe(1)
  })
})
