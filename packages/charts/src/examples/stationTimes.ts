import type { Figure } from '../figure.ts'
import { statesIn, stationTimes } from '../stationTimes.ts'
import { baseLineCount, baseLineSweep, SHIFT } from './baseLine.ts'

export function stationTimesExample(): Figure {
  return stationTimes(baseLineCount(10), { ...SHIFT, states: statesIn(baseLineSweep().counts) })
}
