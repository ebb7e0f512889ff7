import type { Figure } from '../draw/figure.ts'
import { stationLoads } from '../times/stationLoads.ts'

export function stationLoadsExample(): Figure {
  const station = (name: string, ...tasks: readonly (readonly [string, number])[]) => ({
    name,
    tasks: tasks.map(([task, seconds]) => ({ name: task, seconds })),
  })
  return stationLoads(
    [
      station('Station 1', ['place frame', 22], ['fit pump', 31]),
      station('Station 2', ['braze pipes', 48.5]),
      station('Station 3', ['wire', 35], ['fit lid', 12], ['label', 9]),
      station('Station 4', ['test', 61.8]),
    ],
    62,
  )
}
