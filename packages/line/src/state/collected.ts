/** What is gathered of a run while it goes on, and how the engines hand it over. `collect.ts` and `causes.ts` do so; nothing here is read by the model. (MODEL.md §11) */
import type { GrowingList } from './growingList.ts'
import type { Level } from '../telling/level.ts'

export interface Collected {
  /** state of each part, as a place in STATION_STATES, ZONE_STATES, CARRIER_STATES */
  readonly stationState: Uint8Array
  readonly zoneState: Uint8Array
  readonly carrierState: Uint8Array
  /** by part: its record (collect.ts) */
  readonly stationSeconds: Float64Array
  readonly zoneSeconds: Float64Array
  readonly carrierSeconds: Float64Array
  /** stays of a station that had a duty, moves out of a zone, laps of a carrier */
  readonly cycles: Int32Array
  readonly movesOut: Int32Array
  readonly carrierLaps: Int32Array
  readonly lapZone: number
  /** instant of its last move start out of the lap zone; NaN before the first */
  readonly carrierLapStart: Float64Array
  /** tallies of seconds (tally.ts) */
  readonly lap: Float64Array
  readonly timeInLine: Float64Array
  /** 0: the integral of products over time, 1: instant up to which it stands */
  readonly products: Float64Array
  loads: number
  /** up to the end of the warm-up, instant 0 included: moves, loads, output; and moves out of the store at any time */
  movesBefore: number
  loadsBefore: number
  outputBefore: number
  movesFromStore: number
  rejections: number
  rejectedTakenOff: number
  /** instants of output */
  readonly outputs: GrowingList
  /** carriers in the store, or on their way into it */
  readonly stored: Level
  readonly causes: CollectedCauses

  /** time 0 */
  reset(): void
  /** the warm-up is over at `now` */
  restart(now: number): void
  /** something happened to the zone, or to the station in it */
  touch(zone: number): void
  /** the instant is over: states are judged */
  judge(): void
  judgeCarrier(carrier: number): void
  onMoveStart(from: number, to: number, carrier: number): void
  onLateClear(zone: number): void
  onLap(carrier: number): void
  onLoad(): void
  onUnload(carrier: number): void
  /** a cause of stops is about to begin or end */
  onCauseChange(cause: number): void
  /** the window is over at the line's `now` */
  finish(): void
}

/** Stopped time by its cause: the breakdown sources in their order, then safety stops by station, then the breaks. */
export interface CollectedCauses {
  /** causes that there are, by name */
  readonly names: readonly string[]
  readonly length: number
  /** stops begun, and time down, by cause */
  readonly count: Int32Array
  readonly seconds: Float64Array
  /** seconds by part and cause; length zones · causes, stations · causes */
  readonly zoneSeconds: Float64Array
  readonly stationSeconds: Float64Array
  /** @param isFirst  no other stop of this cause is under way; default: true */
  begin(cause: number, isFirst?: boolean): void
  end(cause: number): void
}
