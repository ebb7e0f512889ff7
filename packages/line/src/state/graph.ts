/** The drawing of a line: places and the paths between them; nothing here changes. (MODEL.md §3) */
import type { PartList } from './lists.ts'

/** Which of several ways out is taken. (MODEL.md §3) */
export const FIRST = 0
export const ALTERNATE = 1
export const FIRST_FREE = 2

/** Whether the zone at the end of a path stops a carrier that has no work there. */
export const STOPS_NEVER = 0
export const STOPS_ALWAYS = 1
export const STOPS_PERHAPS = 2

/** Zones and store together are the places. Path columns have the length paths, place columns one for each zone and one for the store. */
export interface Graph {
  /** path i leads from zone i to the next one, all round, and takes everybody */
  readonly isLoop: boolean
  /** the place that a path leaves, and the one it leads to; length paths */
  readonly pathFrom: Int32Array
  readonly pathTo: Int32Array
  /** the one path out of the zone, if it is the only one and takes everybody; NONE: look among `outs` */
  readonly onlyOut: Int32Array
  /** paths out of a place and into it, ascending */
  readonly outs: PartList
  readonly ins: PartList
  /** places whose carriers may claim the zone, also through exit-clear transfers */
  readonly feeders: PartList
  /** place behind `onlyOut`; place before the only path in; NONE where there are several */
  readonly zoneNext: Int32Array
  readonly zonePrevious: Int32Array
  /** 1: the path has conditions */
  readonly pathIsChosen: Uint8Array
  /** FIRST, ALTERNATE or FIRST_FREE, by place */
  readonly divert: Uint8Array
  /** 1: the merge into the zone alternates */
  readonly mergeAlternates: Uint8Array
  /** place of the path in the priority list of its end; 0 where there is none; length paths */
  readonly mergeRank: Int32Array
  /** true: some zone has another merge than `waiting` */
  readonly hasMerges: boolean
  /** STOPS_…: whether its end stops a carrier without work there */
  readonly pathStops: Uint8Array
  /** 1: a transfer entered only if its exit is clear */
  readonly exitClear: Uint8Array
  /** by path: station whose operator moves the carrier; NONE: the drive does */
  readonly manualStation: Int32Array
}
