import { callingThread, type Pool } from '@loopwright/study/machine'
import { expect, test } from 'vitest'
import { memoryShell } from '../../../tests/helpers/memoryShell.ts'
import { fewEnough, threadsOf, withThreads } from './threads.ts'

test('threads are there before the command is, and gone when it has failed', async () => {
  let pool: Pool | undefined
  const failing = withThreads({ workers: 2 }, 100, async (flags: { workers: number; pool?: Pool }) => {
    pool = flags.pool
    expect(threadsOf(flags, { pool: callingThread() })).toEqual({ workers: 2, pool })
    throw new Error('no such file')
  })
  await expect(failing).rejects.toThrow('no such file')
  expect(pool!.size).toBe(2)
  const task = { line: 0, carriers: 1, seed: '1', from: 0, to: 1, want: 'rows' } as const
  await expect(pool!.run(0, task)).rejects.toThrow('the pool is closed')
})

test('a few runs start none', async () => {
  expect(await withThreads({}, 49, async (flags: { pool?: Pool }) => (flags.pool === undefined ? 7 : 8))).toBe(7)
  expect(threadsOf({}, {})).toEqual({})
})

test('threads that are there already are taken where the command has none of its own', () => {
  const pool = callingThread()
  expect(threadsOf({ workers: 1 }, { pool })).toEqual({ workers: 1, pool })
})

test('no more threads than the machine can use, and a word where more were asked for', () => {
  const shell = memoryShell()
  expect(fewEnough(shell, { workers: 200 }, 2)).toEqual({ workers: 8 })
  expect(shell.said.err).toMatch(/^--workers 200: 8 are started/)
  expect([fewEnough(shell, { workers: 8 }, 2), fewEnough(shell, {}, 2)]).toEqual([{ workers: 8 }, {}])
})
