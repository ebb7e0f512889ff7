/** Products: who holds which, where they come from and go to, inspection and rework. (MODEL.md §6, §8) */
import type { Level } from '../telling/level.ts'

/** Which products an unload takes off. */
export const ACCEPTS_GOOD = 0
export const ACCEPTS_REJECTED = 1
export const ACCEPTS_ALL = 2

/** One supply while the line runs. */
export interface Supply {
  readonly name: string
  /** true: products are always there, and nothing is kept of them */
  readonly always: boolean
  /** sampler and stream of the time between arrivals; NONE: a list, or always */
  readonly sampler: number
  readonly stream: number
  /** instants of a list, on the grid */
  readonly instants: Float64Array
  /** places in the queue; infinite: no limit */
  readonly limit: number
  /** arrivals so far, of a list also the next one's place */
  arrived: number
  /** a ring of the instants at which the products came that wait and are not set aside */
  since: Float64Array
  first: number
  waiting: number
  /** products set aside whose load has not started */
  aside: number
  /** products in the queue, those set aside too */
  readonly queue: Level
  // What is told, counted in the window
  arrivals: number
  turnedAway: number
  queueMax: number
  readonly times: Float64Array
}

export interface Goods {
  /** serial of its product; NONE: empty */
  readonly carrierSerial: Int32Array
  readonly carrierVariant: Int32Array
  readonly carrierLoaded: Float64Array
  /** 1: the carrier holds a rejected product */
  readonly carrierRejected: Uint8Array
  /** ACCEPTS_…, by station: products that its unload takes off */
  readonly stationAccepts: Uint8Array
  nextSerial: number
  /** products there will ever be */
  readonly productsMax: number
  readonly mixStream: number
  readonly mixSequence: Int32Array
  readonly mixShares: Float64Array
  /** running sums of the shares of a random mix */
  readonly mixCumulative: Float64Array
  readonly mixGiven: Float64Array
  readonly mixShareSum: number
  /** the line's first, then those of stations */
  readonly supplies: readonly Supply[]
  readonly stationSupply: Int32Array
  /** by station: when the product set aside for it came */
  readonly productSince: Float64Array
  /** products set aside whose load has not started */
  productsAside: number
  /** by station; NONE: always ready */
  readonly receiverSampler: Int32Array
  readonly receiverStream: Int32Array
  readonly receiverPlaces: Int32Array
  readonly receiverBusy: Uint8Array
  readonly receiverWaiting: Int32Array
  readonly receiverAside: Uint8Array
}

/** Inspection and rework (rejects.ts). */
export interface Rejects {
  /** NO_REWORK, REWORK or REWORK_ONLY */
  readonly taskRework: Uint8Array
  /** index of the inspection; NONE */
  readonly taskInspection: Int32Array
  readonly rejectProbability: Float64Array
  readonly reworkStream: Int32Array
  readonly inspectAgainStream: Int32Array
  /** 1: it was rejected in this very stay, so that its list waits for the next arrival */
  readonly carrierFresh: Uint8Array
  /** `carrier · tasks + task`, 1: on the list of the rejected product */
  readonly taskListed: Uint8Array
  /** of the duty that ends; scratch */
  readonly taskNow: Uint8Array
}
