/** Transfers: where they stand, and their changes of position. (MODEL.md §4) */
import type { WorkList } from './lists.ts'

/** What a transfer's change is about. */
export const NO_CHANGE = 0
export const TO_WAY_OUT_PENDING = 1
export const TO_WAY_OUT = 2
export const BACK_PENDING = 3
export const BACK = 4
/** before a carrier at rest that has won the zone comes in */
export const TO_WAY_IN = 5

/** Positions of a transfer. */
export const LOW = 0
export const HIGH = 1

/** By zone, unless said otherwise. */
export interface Transfers {
  /** 1: its transfer stands otherwise for some of its ways than for others */
  readonly zoneChanges: Uint8Array
  /** 1: ways in of different positions, so that its transfer rests as it stands */
  readonly zoneRests: Uint8Array
  /** 1: ways out of different positions and a divert to the first free one, so that the way out is fixed once */
  readonly zoneFixes: Uint8Array
  /** LOW or HIGH: where its transfer stands, where it goes when clear (NONE: nowhere), where it stands at time 0 if empty */
  readonly zonePosition: Uint8Array
  readonly backPosition: Int32Array
  readonly startPosition: Uint8Array
  /** `2·zone + position`: seconds of the change to that position */
  readonly changeSeconds: Float64Array
  readonly zoneChange: Uint8Array
  /** LOW or HIGH: what a transfer at its ends must stand at */
  readonly pathFromPosition: Uint8Array
  readonly pathToPosition: Uint8Array
  readonly changeList: WorkList
}
