import type { Figure } from '../figure.ts'
import { stoppedTime } from '../stoppedTime.ts'
import { baseLineCount, SHIFT } from './baseLine.ts'

export function stoppedTimeExample(): Figure {
  return stoppedTime(baseLineCount(10), SHIFT)
}
