import { expect, test } from 'vitest'
import { loopLine } from './builder/sketchedLine.ts'
import { tasksOf } from './stationTasks.ts'

test('all tasks of a station, duty by duty; of one without duties none', () => {
  const { spec } = loopLine({
    zones: 4,
    zoneLength: 1,
    carriers: { count: 1, length: 0.5 },
    drive: { speed: 0.3 },
    stations: { In: { zone: 'Z01', work: { fit: 20, test: 10 }, load: 5, unload: 6 } },
    end: 3600,
  })
  expect(spec.stations.map((station) => tasksOf(station).map(({ task, seconds }) => [spec.tasks[task], seconds[0]]))).toEqual([
    [
      [expect.stringContaining('unload'), { kind: 'constant', value: 6 }],
      [expect.stringContaining('load'), { kind: 'constant', value: 5 }],
      ['fit', { kind: 'constant', value: 20 }],
      ['test', { kind: 'constant', value: 10 }],
    ],
  ])
  expect(tasksOf({ unload: null, load: [], work: null })).toEqual([])
})
