/** Two stations of one operator, each with a carrier that has just come to rest. */
import { buildLine } from '../../packages/line/src/build/build.ts'
import { resetLine } from '../../packages/line/src/build/start.ts'
import type { Line } from '../../packages/line/src/state/line.ts'
import { clearList } from '../../packages/line/src/state/lists.ts'
import { STATION_STATES } from '@loopwright/line'
import { staffed } from './staffed.ts'

/** S1 in Z1 loads for 10 s, S2 in Z3 works for 20 s; one operator for both, who stands at S1, 5 s from S2; carriers stand in both, the second one loaded. */
export function calledStations(): Line {
  const spec = staffed(
    {
      zones: 6,
      start: [1, 3],
      stations: [
        { at: 1, load: 10, unload: 0 },
        { at: 3, work: { w: 20 } },
      ],
      until: 100,
    },
    { operators: [{ stations: [0, 1] }], walks: [{ between: [0, 1], seconds: 5 }] },
  )
  const line = buildLine(spec)
  resetLine(line, 'a', 0)
  clearList(line.moves.moveList)
  line.goods.carrierSerial[1] = 0
  return line
}

/** What is told of the station now. */
export const stationStateOf = (line: Line, station: number): string => STATION_STATES[line.collector.stationState[station]!]!
