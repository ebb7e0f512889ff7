/** A run as it is shown again: where each carrier is, what each station does, what is stopped, who is where; all of it read off the events of the run. */
import type { StationState } from '@loopwright/line'

/** A carrier from the start of a move until it is at rest, or passes into the next move. Seconds from the start of the run. */
export interface Leg {
  /** zones; STORE (−1): the store */
  readonly from: number
  readonly to: number
  /** index of the path */
  readonly path: number
  readonly start: number
  /** at rest, or where the next move starts; where the run ends before: the end */
  readonly arrive: number
  /** the run ends while it moves */
  readonly open: boolean
  /** while these last it stands still in the midst of the move */
  readonly frozen: readonly (readonly [from: number, to: number])[]
}

export interface CarrierTrack {
  /** zone at the start of the run; STORE (−1): the store */
  readonly startZone: number
  /** in the order of time */
  readonly legs: readonly Leg[]
  /** from when on it carries a product, and from when on none, and so on */
  readonly loadChanges: readonly number[]
}

export interface StationStretch {
  readonly from: number
  readonly to: number
  readonly state: StationState
}

/** A stop or a break. */
export interface Hold {
  /** as people call it */
  readonly name: string
  readonly from: number
  readonly to: number
  /** indices of zones that stand; null: all */
  readonly zones: readonly number[] | null
  /** index of the station whose work stands; null: none; of a break all stand */
  readonly station: number | null
  readonly isBreak: boolean
}

export interface OperatorStretch {
  readonly from: number
  readonly to: number
  /** index */
  readonly station: number
  /** false: on the way there */
  readonly there: boolean
  /** bound to the work there; false: stands there, free */
  readonly bound: boolean
}

/** An instant that somebody may want to see. */
export interface ReplayMark {
  readonly label: string
  readonly seconds: number
}

export interface Replay {
  readonly endSeconds: number
  /** counted from here on */
  readonly warmupSeconds: number
  readonly carriers: readonly CarrierTrack[]
  /** in the order of the line */
  readonly stations: readonly (readonly StationStretch[])[]
  readonly holds: readonly Hold[]
  readonly operators: readonly { readonly name: string; readonly stretches: readonly OperatorStretch[] }[]
  /** of all events, each once, rising */
  readonly instants: Float64Array
  /** units unloaded: instants, rising */
  readonly made: Float64Array
  readonly marks: readonly ReplayMark[]
}
