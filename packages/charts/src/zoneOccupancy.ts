/** How full every zone is, in travel order. */
import type { SweepCount } from '@loopwright/study'
import type { Figure, WindowWords } from './figure.ts'

export interface ZoneOccupancyOptions extends WindowWords {
  /** what is in the zones, in travel order; default: nothing known */
  readonly places?: readonly { readonly station: string | null; readonly transfer: boolean }[]
}

export function zoneOccupancy(_count: Pick<SweepCount, 'carriers' | 'zones'>, _options: ZoneOccupancyOptions): Figure {
  throw new Error('under construction')
}
