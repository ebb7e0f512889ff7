import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { createPool, type Pool } from './pool.ts'
import { replicate } from './replicate.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'

const spec = stationLoop()
const task = { carriers: 3, seed: '2', from: 0, to: 1, want: 'results' } as const

describe('threads', () => {
  let pool: Pool
  beforeAll(() => {
    pool = createPool(2)
  })
  afterAll(() => pool.close())

  test('each run what the calling thread would', async () => {
    const line = pool.line(spec)
    expect(pool.line(spec)).toBe(line)
    const [here] = await replicate(spec, { replications: 1 }, { seed: '2', workers: 0 })
    for (const result of await Promise.all([pool.run(0, { ...task, line }), pool.run(1, { ...task, line })]))
      expect(result.results).toEqual([here])
  })

  test('tell what a task threw, with its name and sentence, and go on', async () => {
    const line = pool.line(spec)
    await expect(pool.run(0, { ...task, line, carriers: 9 })).rejects.toMatchObject({
      name: 'RangeError',
      message: expect.stringContaining('not 9'),
    })
    await expect(pool.run(0, { ...task, line, seed: 'a/b' })).rejects.toThrow(/seed/i)
    expect((await pool.run(0, { ...task, line })).results).toHaveLength(1)
  })

  test('have a task under way and one waiting, and answer each with its own result', async () => {
    const line = pool.line(spec)
    const given = [2, 3].map((carriers) => pool.run(1, { ...task, line, carriers }))
    await expect(pool.run(1, { ...task, line })).rejects.toThrow('busy')
    const answers = await Promise.all(given)
    expect(answers.map(({ results }) => results[0]!.carriers.length)).toEqual([2, 3])
  })
})

test('closing ends a task under way', async () => {
  const pool = createPool(1)
  const line = pool.line(stationLoop({ window: { warmupSeconds: 0, endSeconds: 1e9 } }))
  const never = pool.run(0, { ...task, line })
  const ended = expect(never).rejects.toThrow('ended early')
  await pool.close()
  await ended
  await expect(pool.run(0, { ...task, line })).rejects.toThrow('ended early')
})

test('no more threads than there is work', async () => {
  const pool = createPool(3, 2)
  expect(pool.size).toBe(2)
  await pool.close()
})

test('no thread is no pool', () => {
  for (const workers of [0, 1.5, -1]) expect(() => createPool(workers)).toThrow('whole number of at least 1')
})
