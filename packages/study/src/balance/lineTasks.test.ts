import { expect, test } from 'vitest'
import { lineTasks } from './lineTasks.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'

test('work in the order of flow, means over the mix, each after the one before', () => {
  const base = stationLoop()
  const constant = (value: number) => ({ kind: 'constant', value }) as const
  const line = {
    ...base,
    variants: ['a', 'b'],
    mix: { kind: 'random', shares: [3, 1] } as const,
    tasks: [...base.tasks, 'check'],
    stations: [
      { ...base.stations[0]!, zone: 6, load: [{ task: 0, seconds: [constant(8), constant(8)] }] },
      { ...base.stations[1]!, zone: 2, work: [{ task: 1, seconds: [constant(20), null] }] },
      { ...base.stations[1]!, name: 'D', zone: 7, work: [{ task: 3, seconds: [constant(10), constant(30)] }] },
      { ...base.stations[2]!, zone: 4, unload: [{ task: 2, seconds: [constant(6), constant(6)] }] },
    ],
  }
  expect(lineTasks(line)).toEqual([
    { name: 'check', seconds: 15, after: [] },
    { name: 'fit', seconds: 15, after: ['check'] },
  ])
})
