import { expect, test } from 'vitest'
import type { Present } from './registry.ts'
import { watchWorkers, workersWords } from './watchWorkers.ts'

const worker = (mark: string, threads: number): Present => ({
  kind: 'worker',
  id: mark,
  mark,
  machine: 'Node v1, abacus',
  host: 'elsewhere',
  threads,
  jobs: 0,
  asked: 0,
})

test('who works is told by number, who cannot by name and engine', () => {
  const words = (...all: Present[]): string => workersWords(all, 'm', 'plant:6379')
  expect(words()).toBe('no worker of this engine (m) is at plant:6379 yet: start loopwright work there or here; the study waits')
  expect(words(worker('m', 1))).toBe('1 worker with 1 thread at plant:6379')
  expect(words(worker('m', 4), worker('m', 8))).toBe('2 workers with 12 threads at plant:6379')
  expect(words(worker('m', 4), worker('o', 8))).toMatch(
    /^1 worker with 4 threads at plant:6379\nrefused, since .*: elsewhere: engine o, Node v1, abacus$/,
  )
})

test('it is told once, and again where it changes', async () => {
  const said: string[] = []
  let looks = 0
  const { end } = watchWorkers(
    async () => {
      looks += 1
      return [worker('m', 2)]
    },
    { mark: 'm', name: 'plant', say: (sentence) => said.push(sentence), waits: () => true },
  )
  while (looks === 0) await new Promise((resolve) => setTimeout(resolve, 20))
  await new Promise((resolve) => setTimeout(resolve, 20))
  end()
  expect(said).toEqual(['1 worker with 2 threads at plant'])
})
