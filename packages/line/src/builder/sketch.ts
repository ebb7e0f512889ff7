/**
 * A line as a person says it: names for indices, and only what is not the usual. All numbers are SI: seconds, metres, metres per second; shares are 0 … 1.
 * The words are those of a scenario file, so that one message fits both; `LineSpec` is the complete data that comes of it.
 */
import type { Distribution } from '@loopwright/stats'
import type { Position, StationSpec, ZoneSpec } from '../spec.ts'

/** Seconds, ≥ 0, or a distribution of them. */
export type Time = number | Distribution

/** One time for all variants; or one for each, in their order or by name: null, the variant has no such task here. */
export type TaskTimes = Time | readonly (Time | null)[] | Readonly<Record<string, Time | null>>

/** A time: the only task, called after duty and station. Or tasks by name; none at all: a duty of 0 s. */
export type Duty = Time | Readonly<Record<string, TaskTimes>>

/** A name, or the place in its list, from 0. */
export type Ref = string | number

/** A zone, or `store`: outside an open line. */
export type PlaceRef = Ref

/** What is drawn: whether zones lead on to the next one by themselves. */
export type Shape = 'loop' | 'straight' | 'graph'

/** What is drawn, complete but for what is usual. */
export interface LineSketch {
  /** in travel order: how many, or which (a name alone: nothing special about it); those without a name are Z01, Z02 … by their place */
  readonly zones: number | readonly (string | ZoneSketch)[]
  /** metres, > 0, of every zone that says nothing else; default: not known, which needs times or distances at every path */
  readonly zoneLength?: number
  /** own values of zones by name; they are stronger than those in the list */
  readonly own?: Readonly<Record<string, ZoneSketch>>
  /** zones beside a loop or a straight line, to which `paths` lead */
  readonly beside?: readonly (string | ZoneSketch)[]
  /** zones put into the loop or straight line: all others keep their names, and what stands in them */
  readonly putIn?: PutIn | readonly PutIn[]
  /** names of zones that are not there */
  readonly takeOut?: readonly string[]
  /** own values of paths, and further ones, such as `Z05 > R1 > Z06`; of a graph: all */
  readonly paths?: readonly (string | PathSketch)[]
  readonly drive?: DriveSketch
  /** how many; or with their size, and where they start */
  readonly carriers: number | CarriersSketch
  /** by name, in the order of their index */
  readonly stations?: Readonly<Record<string, StationSketch>>
  /** names of the tasks in the order of their index; default: as they appear */
  readonly tasks?: readonly string[]
  readonly products?: ProductsSketch
  /** of every load station that has none of its own; default: products are always there */
  readonly supply?: SupplySketch
  /** probability of rejection, 0 … 1, by task */
  readonly inspections?: Readonly<Record<string, number>>
  /** `again`: rejected products get the task once more; `only`: nobody else gets it; by task */
  readonly rework?: Readonly<Record<string, 'again' | 'only'>>
  /** zones whose drives stop together, by name; default: one section, `line`, of all */
  readonly sections?: Readonly<Record<string, readonly Ref[]>>
  /** named operators; a station that nobody covers has operators of its own */
  readonly operators?: Readonly<Record<string, OperatorSketch>>
  /** times between two stations, the same both ways; default 0 s */
  readonly walks?: readonly { readonly between: readonly [Ref, Ref]; readonly lasts: number }[]
  /** breakdowns and short stops by name */
  readonly stops?: Readonly<Record<string, StopSketch>>
  /** repairs that can go on at once, ≥ 1; default: as many as there are */
  readonly repairCrews?: number
  /** in the order of time: start and length, seconds */
  readonly breaks?: readonly { readonly after: number; readonly lasts: number }[]
  /** default true */
  readonly conveyorDuringBreaks?: boolean
  /** seconds that are not counted; default 0 */
  readonly warmup?: number
  /** end of the run, seconds from time 0 */
  readonly end: number
}

/** A zone, as far as it is not the usual one. */
export interface ZoneSketch {
  readonly name?: string
  /** metres, > 0; default: `zoneLength` */
  readonly length?: number
  /** metres, ≥ 0; default: that of the drive, 0 at a transfer */
  readonly sensorBeforeStop?: number
  /** default: that of the drive; a transfer is always left by `single` */
  readonly release?: 'single' | 'train'
  /** of paths into this zone */
  readonly speed?: number
  readonly acceleration?: number
  /** seconds to change to high and to low; default: none is there */
  readonly transfer?: { readonly lift: number; readonly lower: number; readonly enterOnlyIfExitClear?: boolean }
  /** which of several ways out is taken; default `first` */
  readonly divert?: ZoneSpec['divert']
  /** which of several carriers comes in; default `waiting` */
  readonly merge?: 'waiting' | 'alternate' | { readonly priority: readonly PlaceRef[] }
}

/** Zones put into a line before or behind a station or zone. */
export interface PutIn {
  /** a station or a zone; one of the two */
  readonly before?: string
  readonly after?: string
  /** how many; default 1 */
  readonly zones?: number
  /** metres; default: that of the zone beside which they stand */
  readonly length?: number
}

/** A way from one zone to another, as far as it is not the usual one. */
export interface PathSketch {
  readonly from: PlaceRef
  /** default: the next zone of the loop or straight line */
  readonly to?: PlaceRef
  /** metres between the stop points, > 0; default: the length of the next zone */
  readonly distance?: number
  readonly speed?: number
  readonly acceleration?: number
  /** the carrier travels sideways; default: as the transfers turn it */
  readonly across?: boolean
  /** default: out of a transfer of a loop `high`, else `low` */
  readonly fromPosition?: Position
  readonly toPosition?: Position
  /** default: from the drive */
  readonly move?: Time
  /** `move`: the same draw. Default: `move` where a move is given and no speed known, else from the drive */
  readonly clear?: Time | 'move'
  /** whom it takes; default: everybody */
  readonly takes?: {
    readonly variants?: readonly Ref[]
    readonly load?: 'empty' | 'loaded'
    readonly rejected?: boolean
    readonly forStation?: Ref
  }
  /** station whose operator moves the carrier by hand, in the time `move` */
  readonly push?: Ref
  readonly pull?: Ref
}

/** How carriers move: metres per second, metres per second squared, seconds. */
export interface DriveSketch {
  /** metres per second, > 0; default: not known, which needs times at every path */
  readonly speed?: number
  /** metres per second squared, > 0; default: no ramps */
  readonly acceleration?: number
  /** seconds from the change of a sensor to the start of a drive; default 0.1 */
  readonly reaction?: number
  /** metres, ≥ 0; default 0 */
  readonly sensorBeforeStop?: number
  /** default `single` */
  readonly release?: 'single' | 'train'
  /** seconds between the starts of a train; default: the reaction time */
  readonly stagger?: number
}

/** How many carriers, how large, and where they start. */
export interface CarriersSketch {
  /** ≥ 1; default: as many as `start` names */
  readonly count?: number
  /** metres in the direction of travel; default: not known, which needs a clear time at every path */
  readonly length?: number
  readonly width?: number
  /** where they stand at time 0; default `spread`, of a straight line `store` */
  readonly start?: 'spread' | 'packed' | 'store' | readonly PlaceRef[]
}

/** A station: where it stands, what it does, whom it needs. */
export interface StationSketch {
  readonly zone: Ref
  /** what people call it; default: its name */
  readonly title?: string
  readonly unload?: Duty
  readonly load?: Duty
  readonly work?: Duty
  /** from the end of the work to the release; default 0 s */
  readonly release?: Time
  /** works without an operator; default false */
  readonly automatic?: boolean
  /** people that each duty needs, ≥ 1; default 1 */
  readonly operatorsNeeded?: number
  /** only an automatic station can; default false */
  readonly worksInBreaks?: boolean
  /** products that its unload takes off; default `good` */
  readonly accepts?: StationSpec['accepts']
  readonly supply?: SupplySketch
  /** what its unloaded products go to; `queue`: places before it, default 0 */
  readonly receiver?: { readonly cycle: Time; readonly queue?: number }
  /** chance that somebody is in the way of a move that touches its zone, 0 … 1, and the time to the reset */
  readonly safetyStop?: { readonly chance: number; readonly reset: Time }
}

/** `every`: time between two arrivals; `times`: instants, seconds, in order; `queue`: places, default no limit. */
export type SupplySketch =
  | 'always'
  | { readonly name?: string; readonly every?: Time; readonly times?: readonly number[]; readonly queue?: number }

/** A person, and the stations he serves. */
export interface OperatorSketch {
  readonly stations: readonly Ref[]
  /** default: the first of them */
  readonly start?: Ref
}

/** Something that fails or is stopped: where, after what time, for how long; seconds. */
export interface StopSketch {
  /** `S2`, `Z05`, `line`, `transfer Z09`, `every station`, `every zone`, `every transfer`; a list: a source for each */
  readonly at: string | readonly string[]
  /** time to failure */
  readonly after: Time
  /** time to repair */
  readonly lasts: Time
  /** what the time to failure counts; default `operating` */
  readonly clock?: 'operating' | 'calendar'
}

/** Variants and their mix. */
export interface ProductsSketch {
  /** names, or weights ≥ 0 by name; default: one variant, `product` */
  readonly variants?: readonly string[] | Readonly<Record<string, number>>
  /** default `random`: drawn by weight */
  readonly mix?: 'random' | 'levelled' | { readonly kind: 'pattern' | 'list'; readonly sequence: readonly Ref[] }
}
