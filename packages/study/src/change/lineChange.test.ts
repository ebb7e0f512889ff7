import { expect, test } from 'vitest'
import { taskPlaces, timesOf, withTaskTimes } from './lineChange.ts'
import { stationLoop } from '../../../../tests/helpers/stationLoop.ts'

test('times that are not changed leave an equal line', () => {
  expect(withTaskTimes(stationLoop(), (times) => times)).toEqual(stationLoop())
})

test('only the task at the station named is changed', () => {
  const changed = withTaskTimes(stationLoop(), (times, at) => (at.station === 1 ? { kind: 'constant', value: 7 } : times))
  expect(timesOf(changed, 1, 1)).toEqual([{ kind: 'constant', value: 7 }])
  expect(timesOf(changed, 0, 0)).toEqual(timesOf(stationLoop(), 0, 0))
})

test('tasks in the order of stations', () => {
  expect(taskPlaces(stationLoop())).toEqual([0, 1, 2].map((index) => ({ station: index, task: index, several: false })))
})
