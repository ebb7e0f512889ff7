import { expect, test } from 'vitest'
import { Names, Samplers } from './registry.ts'

test('a name has one index, by the order in which it is first asked for', () => {
  const names = new Names()
  expect(['mix', 'task/weld', 'mix', 'task/glue', 'task/weld'].map((name) => names.of(name))).toEqual([0, 1, 0, 2, 1])
  expect(names.list).toEqual(['mix', 'task/weld', 'task/glue'])
})

test('every distribution is a sampler of its own, also an equal one', () => {
  const samplers = new Samplers()
  const time = { kind: 'constant', value: 3 } as const
  expect([samplers.of(time), samplers.of(time)]).toEqual([0, 1])
  expect(samplers.list).toEqual([time, time])
})
