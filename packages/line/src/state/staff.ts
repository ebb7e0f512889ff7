/** Operators who are kept: where they are and what they are bound to. (MODEL.md §5, §6) */
import type { PartList } from './lists.ts'

/** Operators that are kept (operators.ts): length operators, unless said otherwise. */
export interface Staff {
  /** station where each stands at time 0 */
  readonly operatorStart: Int32Array
  /** by station: operators who cover it, ascending */
  readonly coverage: PartList
  /** `a · stations + b`: seconds of the walk between two stations; empty where there are no operators */
  readonly walkSeconds: Float64Array
  /** station that the operator is bound to, or number of stations + path; NONE: free */
  readonly operatorTask: Int32Array
  /** how many are free */
  operatorsFree: number
  /** station where it stands or walks to */
  readonly operatorPlace: Int32Array
  readonly operatorWalks: Uint8Array
  /** pushes and pulls ended in the window, and their seconds */
  readonly handlingCount: Int32Array
  readonly handlingSeconds: Float64Array
  /** by path: the operator sent for the next move; NONE */
  readonly pathOperator: Int32Array
  /** by carrier: the operator who pushes or pulls it; into the store several may be on one path */
  readonly carrierOperator: Int32Array
  /** by carrier: start of the push or pull */
  readonly handlingSince: Float64Array
  /** by station: pushes and pulls under way on paths that name it */
  readonly stationHandling: Int32Array
  /** places that manual paths lead out of */
  readonly manualFrom: Int32Array
}
