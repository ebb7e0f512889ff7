import type { Figure } from '../draw/figure.ts'
import { unitsSpread } from '../throughput/unitsSpread.ts'
import { baseLineCount, SHIFT } from './baseLine.ts'

export function unitsSpreadExample(): Figure {
  return unitsSpread(baseLineCount(10), SHIFT)
}
