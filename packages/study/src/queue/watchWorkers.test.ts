import { expect, test } from 'vitest'
import type { Present } from './registry.ts'
import { watchWorkers, workersWords } from './watchWorkers.ts'
import { machineWords } from './workMark.ts'

const worker = (mark: string, threads: number, machine = machineWords()): Present => ({
  kind: 'worker',
  id: mark,
  mark,
  machine,
  host: 'elsewhere',
  threads,
  jobs: 0,
  asked: 0,
})

test('who works is told by number, who cannot by name and engine', () => {
  const [mine, otherBits, otherCode] = ['0.1.0-aa-11', '0.1.0-aa-22', '0.1.0-bb-11']
  const words = (...all: Present[]): string => workersWords(all, mine, 'plant:6379')
  expect(words()).toBe('no worker of this engine (0.1.0-aa-11) is at plant:6379 yet: start loopwright work there or here; the study waits')
  expect(words(worker(mine, 1))).toBe('1 worker with 1 thread at plant:6379')
  expect(words(worker(mine, 4), worker(mine, 8))).toBe('2 workers with 12 threads at plant:6379')
  expect(words(worker(mine, 4), worker(mine, 8, 'Node v1, abacus'))).toBe(
    '2 workers with 12 threads at plant:6379\nalike to the last bit in the check runs, though not this Node or processor: elsewhere: engine 0.1.0-aa-11, Node v1, abacus',
  )
  expect(words(worker(mine, 4), worker(otherBits, 8, 'abacus'), worker(otherCode, 8, 'slide rule'))).toBe(
    [
      '1 worker with 4 threads at plant:6379',
      'refused, since its Node or processor gives other last digits in the check runs: elsewhere: engine 0.1.0-aa-22, abacus',
      'refused, since it has another version of the engine, whose numbers may be others: elsewhere: engine 0.1.0-bb-11, slide rule',
    ].join('\n'),
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

test('ended while it looks, it says nothing more', async () => {
  const said: string[] = []
  let looks = 0
  let found: (all: Present[]) => void = () => {}
  const { end } = watchWorkers(
    () => {
      looks += 1
      return new Promise((resolve) => (found = resolve))
    },
    { mark: 'm', name: 'plant', say: (sentence) => said.push(sentence), waits: () => true },
  )
  while (looks === 0) await new Promise((resolve) => setTimeout(resolve, 20))
  end()
  found([worker('m', 2)])
  await new Promise((resolve) => setImmediate(resolve))
  expect(said).toEqual([])
})
