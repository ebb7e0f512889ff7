import type { Figure } from '../draw/figure.ts'
import { statesIn, stationTimes } from '../times/stationTimes.ts'
import { baseLineCount, baseLineSweep, SHIFT } from './baseLine.ts'

export function stationTimesExample(): Figure {
  return stationTimes(baseLineCount(10), { ...SHIFT, states: statesIn(baseLineSweep().counts) })
}
