/** How units per window spread from one replication to the next, with the plan and P10. */
import type { SweepCount } from '@loopwright/study'
import type { Figure, WindowWords } from './figure.ts'

export interface UnitsSpreadOptions extends WindowWords {}

export function unitsSpread(_count: Pick<SweepCount, 'carriers' | 'units' | 'p10' | 'meetsPlan'>, _options: UnitsSpreadOptions): Figure {
  throw new Error('under construction')
}
