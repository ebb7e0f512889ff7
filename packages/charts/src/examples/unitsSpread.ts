import type { Figure } from '../figure.ts'
import { unitsSpread } from '../unitsSpread.ts'
import { baseLineCount, SHIFT } from './baseLine.ts'

export function unitsSpreadExample(): Figure {
  return unitsSpread(baseLineCount(10), SHIFT)
}
