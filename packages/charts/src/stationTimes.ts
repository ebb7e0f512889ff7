/** Where the time of every station goes: one bar of ten states for each. */
import type { StationState } from '@loopwright/line'
import type { SweepCount } from '@loopwright/study'
import type { Figure, WindowWords } from './figure.ts'

export interface StationTimesOptions extends WindowWords {
  /** states in the key; give those of the whole sweep, so that the key stays when the count changes. Default: those that occur here */
  readonly states?: readonly StationState[]
}

export function stationTimes(_count: Pick<SweepCount, 'carriers' | 'stations'>, _options: StationTimesOptions): Figure {
  throw new Error('under construction')
}

/** The states that occur anywhere in these counts, in the order of STATION_STATES. */
export function statesIn(_counts: readonly Pick<SweepCount, 'stations'>[]): StationState[] {
  throw new Error('under construction')
}
