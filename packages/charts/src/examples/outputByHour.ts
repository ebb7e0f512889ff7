import type { Figure } from '../draw/figure.ts'
import { outputByHour } from '../throughput/outputByHour.ts'
import { BREAKS, baseLineCount, SHIFT } from './baseLine.ts'

export function outputByHourExample(): Figure {
  return outputByHour(baseLineCount(10), { ...SHIFT, breaks: BREAKS, startClock: '14:20' })
}
