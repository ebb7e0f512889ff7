import { expect, test } from 'vitest'
import { blockLoop } from '../../../../tests/bench/lines.ts'
import { callingThread } from './callingThread.ts'
import { forcedPool } from './forcedPool.ts'
import type { Pool } from './pool.ts'
import type { Task } from './task.ts'

const loop = blockLoop(1, 1)
const held = { ...loop, breaks: [{ startSeconds: 600, lengthSeconds: 60 }], conveyorDuringBreaks: false }

async function outputs(pool: Pool, line = loop): Promise<number[]> {
  const task: Task = { line: pool.line(line), carriers: 11, seed: '1', from: 0, to: 3, want: 'results' }
  return (await pool.run(0, task)).results.map(({ output }) => output)
}

test('every task goes to the engine that is forced, and gives what it gives anyhow', async () => {
  const asked: unknown[] = []
  const threads = callingThread()
  const watched: Pool = {
    ...threads,
    run: (thread, task) => {
      asked.push(task.engine)
      return threads.run(thread, task)
    },
  }
  const free = await outputs(watched)
  expect(await outputs(forcedPool(watched, 'events'))).toEqual(free)
  expect(await outputs(forcedPool(watched, 'recursion'))).toEqual(free)
  expect(asked).toEqual([undefined, 'events', 'recursion'])
})

test('an engine that does not hold for the line is refused; the other runs it', async () => {
  const threads = callingThread()
  await expect(outputs(forcedPool(threads, 'recursion'), held)).rejects.toThrow(RangeError)
  expect(await outputs(forcedPool(threads, 'events'), held)).toEqual(await outputs(threads, held))
})
