import { expect, test } from 'vitest'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'
import { callingThread } from './callingThread.ts'
import { replicate } from './replicate.ts'
import { type Task, TaskRunner } from './task.ts'

/** Years of it: no test waits for its end. */
const endless = { ...stationLoop(), window: { warmupSeconds: 0, endSeconds: 1e12 } }
const task: Task = { line: 0, carriers: 3, seed: '1', from: 0, to: 1, want: 'results', engine: 'events' }

test('a run gives way, so that a pool can be closed in the middle of it', async () => {
  const pool = callingThread()
  pool.line(endless)
  const run = pool.run(0, task)
  let turns = 0
  const counting = setInterval(() => turns++, 1)
  setTimeout(() => void pool.close(), 50)
  await expect(run).rejects.toThrow('the run was given up')
  clearInterval(counting)
  expect(turns).toBeGreaterThan(0)
})

test.each(['events', 'recursion'] as const)('a stop ends a study of runs that would not end: %s', async (engine) => {
  const stop = new AbortController()
  setTimeout(() => stop.abort(), 50)
  expect(await replicate(endless, { replications: 2 }, { seed: '1', workers: 0, engine, long: true, signal: stop.signal })).toEqual([])
})

test('tasks that are asked for together are done one after the other, each as if it were alone', async () => {
  const line = stationLoop()
  const pool = callingThread()
  pool.line(line)
  const alone = new TaskRunner()
  alone.learnLine(0, line)
  const tasks = [0, 1, 2].map((from) => ({ ...task, from, to: from + 1 }))
  const together = await Promise.all(tasks.map((each) => pool.run(0, each)))
  expect(together.map(({ results }) => results)).toEqual(tasks.map((each) => alone.perform(each).results))
})
