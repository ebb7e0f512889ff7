import type { Figure } from '../draw/figure.ts'
import { stoppedTime } from '../times/stoppedTime.ts'
import { baseLineCount, SHIFT } from './baseLine.ts'

export function stoppedTimeExample(): Figure {
  return stoppedTime(baseLineCount(10), SHIFT)
}
