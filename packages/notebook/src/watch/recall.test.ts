import { expect, test } from 'vitest'
import { studyMemory } from './recall.ts'

test('the same study of the same lines is made once, and each gets a result of its own', async () => {
  const memory = studyMemory()
  let runs = 0
  const ask = async (name: string, of: readonly unknown[], partial = false) =>
    await memory.recall(name, of, async () => {
      runs += 1
      return { partial, run: runs }
    })
  memory.begin()
  const first = await ask('sweep', [{ a: 1 }])
  const again = await ask('sweep', [{ a: 1 }])
  expect([first, again]).toEqual([
    { partial: false, run: 1 },
    { partial: false, run: 1 },
  ])
  expect(again).not.toBe(first)
  await ask('sweep', [{ a: 2 }])
  await ask('losses', [{ a: 1 }])
  expect([runs, memory.counts()]).toEqual([3, { made: 3, recalled: 1 }])
})

test('lines that differ in anything are told apart; the same numbers are the same however they were made', async () => {
  const memory = studyMemory()
  let runs = 0
  const ask = async (of: unknown): Promise<number> => {
    const { run } = await memory.recall('sweep', [of], async () => {
      runs += 1
      return { partial: false, run: runs }
    })
    return run
  }
  const parts = [
    { a: 1 },
    { a: 0 },
    { a: -0 },
    { a: null },
    { a: Number.POSITIVE_INFINITY },
    { a: Number.NEGATIVE_INFINITY },
    { a: Number.NaN },
    { a: new Map([[1, 2]]) },
    { a: new Set([1]) },
  ]
  for (const [index, part] of parts.entries()) expect(await ask(part)).toBe(index + 1)
  expect(await ask({ a: 0.25 + 0.75 })).toBe(1)
})

test('what was stopped is made again; what a whole run did not ask for is forgotten', async () => {
  const memory = studyMemory()
  let runs = 0
  const ask = async (of: number, partial = false) =>
    await memory.recall('sweep', [of], async () => {
      runs += 1
      return { partial, run: runs }
    })
  memory.begin()
  await ask(1, true)
  await ask(1)
  await ask(2)
  memory.end()
  memory.begin()
  await ask(2)
  memory.end()
  expect(runs).toBe(3)
  memory.begin()
  await ask(1)
  await ask(2)
  expect([runs, memory.counts()]).toEqual([4, { made: 1, recalled: 1 }])
})
