/** Stations and their duties, and what these need before they start. (MODEL.md §5) */
import type { WorkList } from './lists.ts'

/** Duties, in their order. (MODEL.md §5) */
export const UNLOAD_DUTY = 0
export const LOAD_DUTY = 1
export const WORK_DUTY = 2

/** By station, unless said otherwise. */
export interface Work {
  readonly zoneStation: Int32Array
  readonly stationZone: Int32Array
  /** duty under way or next */
  readonly stationDuty: Uint8Array
  /** 1: the carrier here has had a duty */
  readonly stationServed: Uint8Array
  /** 1 at 3·station + duty where the station has that duty */
  readonly hasDuty: Uint8Array
  /** first and one past the last entry of the duty's tasks; length 3·stations + 1 */
  readonly dutyFirst: Int32Array
  /** by entry: index of the task */
  readonly entryTask: Int32Array
  /** by entry · variants: sampler of its time; NONE: that variant has none here */
  readonly entrySampler: Int32Array
  readonly releaseSampler: Int32Array
  readonly releaseStream: Int32Array
  /** 1: the product has had the task; length carriers · tasks */
  readonly taskDone: Uint8Array
  /** stations where work or release may be able to start, the lowest first (lowestFirst.ts) */
  readonly workList: WorkList
}

/** What duties need before they start (calls.ts), by station; kept only where `hasCalls`. */
export interface Calls {
  /** 1: what the duty that is next needs is set aside, or it needs nothing */
  readonly stationAside: Uint8Array
  /** operators that a duty needs, of those that are kept; 0: its own are there at once */
  readonly stationNeeds: Int32Array
  /** 1: it has called in this stay, at `calledAt` */
  readonly stationCalled: Uint8Array
  readonly calledAt: Float64Array
  /** operators sent to it in this stay, and of these those that are there */
  readonly stationSent: Int32Array
  readonly stationThere: Int32Array
  /** stations that wait for a product or the receiver; that have called and may lack an operator */
  readonly asideList: WorkList
  readonly callList: WorkList
  /** true: since the last look something may be set aside, somebody may be sent */
  asideDue: boolean
  sendDue: boolean
}
