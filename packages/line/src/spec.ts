/**
 * The complete description of a line, as the engine reads it: every field present, seconds, metres, metres per second, indices instead of names.
 * `null` is a value ("there is none"), never a gap. What the fields mean is in MODEL.md, whose sections are named here.
 */
import type { Distribution } from '@loopwright/stats'

/** Where a path of an open line begins or ends that is no zone; it stands in place of a zone's index. (§1) */
export const STORE = -1

/** A line, complete: seconds, metres and counts, indices for names; no default is left to the engine. (MODEL.md §1) */
export interface LineSpec {
  /** Zones in travel order. Index = place in this list. (§1) */
  readonly zones: readonly ZoneSpec[]
  /** Paths in order of their index; on one closed loop path i leaves zone i. (§1) */
  readonly paths: readonly PathSpec[]
  /** Zones whose drives stop together; a zone is in one section at most. By default one section holds all. (§1, §7) */
  readonly sections: readonly SectionSpec[]
  readonly carriers: CarriersSpec
  /** ε, seconds, ≥ 0: from the sensor's change to the drive's start. (§3) */
  readonly reactionSeconds: number
  /** δ, seconds, ≥ 0: stagger of a train release. (§3) */
  readonly staggerSeconds: number
  /** Stations in order of their index. (§5) */
  readonly stations: readonly StationSpec[]
  /** Names of all tasks; duties refer to them by index. (§5) */
  readonly tasks: readonly string[]
  /** Tasks that decide whether the product is good; at most one entry per task, by task. (§5) */
  readonly inspections: readonly InspectionSpec[]
  /** Tasks that a rejected product gets (again); at most one entry per task, by task. (§5) */
  readonly rework: readonly ReworkSpec[]
  /** Named operators in order of their index. A station that nobody of them covers has operators of its own. (§6) */
  readonly operators: readonly OperatorSpec[]
  /** Times between two stations; 0 s where nothing is given. (§6) */
  readonly walks: readonly WalkSpec[]
  /** The supply of every load station that has none of its own. (§8) */
  readonly supply: SupplySpec
  /** Names of all variants; times and shares follow this order. At least one. (§8) */
  readonly variants: readonly string[]
  readonly mix: MixSpec
  /** Breakdown sources in order of their index; names are unique. (§7) */
  readonly breakdowns: readonly BreakdownSpec[]
  /** Repairs that can go on at once, ≥ 1; null: as many as there are. (§7) */
  readonly repairCrews: number | null
  /** Breaks, by start. (§7) */
  readonly breaks: readonly BreakSpec[]
  readonly conveyorDuringBreaks: boolean
  /** Statistics cover (warmupSeconds, endSeconds]. (§10) */
  readonly window: WindowSpec
}

/** A zone, for one carrier at a time. (§2) */
export interface ZoneSpec {
  readonly name: string
  /** metres, > 0; null only where every path into the zone has given times or its own distance */
  readonly lengthMetres: number | null
  /** o, metres, ≥ 0: how far the presence sensor lies before the stop point. (§3) */
  readonly sensorBeforeStopMetres: number
  readonly release: 'single' | 'train'
  readonly transfer: TransferSpec | null
  /** which of several ways out is taken. (§3) */
  readonly divert: 'first' | 'alternate' | 'free'
  /** which of several carriers comes in. (§3) */
  readonly merge: MergeSpec
}

/** Who goes first where several ways lead into a zone. (§3) */
export type MergeSpec =
  | { readonly kind: 'waiting' }
  /** zones (or STORE) that carriers come from, the first first; the others after them */
  | { readonly kind: 'priority'; readonly from: readonly number[] }
  | { readonly kind: 'alternate' }

/** Zones that one safety circuit stops together. (§1) */
export interface SectionSpec {
  readonly name: string
  /** indices, ascending */
  readonly zones: readonly number[]
}

/** A lifting belt unit. (§4) */
export interface TransferSpec {
  readonly liftSeconds: number
  readonly lowerSeconds: number
  readonly enterOnlyIfExitClear: boolean
}

/** What a transfer stands at. */
export type Position = 'low' | 'high'

/** A way from one zone to the next. (§3) */
export interface PathSpec {
  /** index of a zone, or STORE */
  readonly from: number
  readonly to: number
  /** d, metres, > 0: distance between the stop points; null where the move is given */
  readonly distanceMetres: number | null
  /** v, metres per second, > 0; null where neither move nor clear is derived from the drive */
  readonly speedMetresPerSecond: number | null
  /** a, metres per second squared, > 0; null: no ramp */
  readonly accelerationMetresPerSecondSquared: number | null
  /** the carrier travels sideways: its width is its length in the direction of travel */
  readonly across: boolean
  /** what a transfer in zone `from` (`to`) must stand at; `low` where there is none. (§4) */
  readonly fromPosition: Position
  readonly toPosition: Position
  /** a given move time replaces the drive's; null: derived */
  readonly moveSeconds: Distribution | null
  /** a given clear time replaces the drive's; null: derived; `move`: the same draw as the given move */
  readonly clearSeconds: Distribution | 'move' | null
  /** whom it takes; all conditions null: everybody. (§3) */
  readonly takes: TakesSpec
  /** somebody pushes or pulls the carrier, in the given move time; null: the drive. (§5) */
  readonly manual: ManualSpec | null
}

/** Conditions of a way out, which must all hold; null: no condition. (§3) */
export interface TakesSpec {
  /** indices of variants; an empty carrier is of none */
  readonly variants: readonly number[] | null
  readonly load: 'empty' | 'loaded' | null
  readonly rejected: boolean | null
  /** index of a station: carriers that have a duty left there */
  readonly forStation: number | null
}

/** A way on which an operator moves the carrier by hand. (§6) */
export interface ManualSpec {
  readonly kind: 'push' | 'pull'
  /** index of the station whose operator does it */
  readonly station: number
}

/** The carriers, and where they are at the start. (§10) */
export interface CarriersSpec {
  /** N ≥ 1 */
  readonly count: number
  /** ℓ, metres, > 0; null only where nothing is derived from it */
  readonly lengthMetres: number | null
  readonly widthMetres: number | null
  /** where they stand at time 0: a rule, so that another count can be tried; or a list of zone indices, one per carrier. (§10) */
  readonly start: 'spread' | 'packed' | 'store' | readonly number[]
}

/** Work at one zone. Duties run in the order unload, load, work; null: no such duty. An empty list is a duty of 0 s at unload and load. (§5) */
export interface StationSpec {
  readonly name: string
  /** what people call it; the name where nothing else is said */
  readonly title: string
  readonly zone: number
  readonly unload: readonly TaskSpec[] | null
  readonly load: readonly TaskSpec[] | null
  /** null, or at least one task */
  readonly work: readonly TaskSpec[] | null
  readonly releaseSeconds: Distribution
  /** whole number ≥ 0; 0: an automatic station. (§5, §6) */
  readonly operatorsNeeded: number
  /** only an automatic station can. (§7) */
  readonly worksInBreaks: boolean
  /** which products its unload takes off. (§5) */
  readonly accepts: 'good' | 'rejected' | 'all'
  /** its own supply; null: that of the line. (§8) */
  readonly supply: SupplySpec | null
  /** what its unloaded products go to; null: always ready. (§8) */
  readonly receiver: ReceiverSpec | null
  /** somebody may be in the way of moves that touch its zone; null: nobody. (§7) */
  readonly safetyStop: SafetyStopSpec | null
}

/** Where products come from. (§8) */
export interface SupplySpec {
  /** names its stream `arrival/<name>`: `supply`, `supply/<station>`, or a name of its own */
  readonly name: string
  readonly arrivals: ArrivalsSpec
  /** places for products that wait, ≥ 0; null: no limit */
  readonly queueLimit: number | null
}

/** When products come to a supply. (§8) */
export type ArrivalsSpec =
  /** always there */
  | { readonly kind: 'always' }
  | { readonly kind: 'every'; readonly seconds: Distribution }
  /** instants, ascending, ≥ 0; when they have run out there are no more products */
  | { readonly kind: 'list'; readonly instants: readonly number[] }

/** Who takes the products off, and how fast. (§8) */
export interface ReceiverSpec {
  readonly cycleSeconds: Distribution
  /** places before it, ≥ 0 */
  readonly queue: number
}

/** A stop of a part of the line for safety. (§7) */
export interface SafetyStopSpec {
  /** of a move, 0 … 1 */
  readonly probability: number
  readonly resetSeconds: Distribution
}

/** An inspection task rejects the product with this probability, 0 … 1. (§5) */
export interface InspectionSpec {
  /** index into LineSpec.tasks */
  readonly task: number
  readonly rejectProbability: number
}

/** (§5) */
export interface ReworkSpec {
  /** index into LineSpec.tasks */
  readonly task: number
  /** true: done for rejected products only */
  readonly only: boolean
}

/** A named operator. (§6) */
export interface OperatorSpec {
  readonly name: string
  /** indices of stations, in the order written */
  readonly stations: readonly number[]
  /** index of the station where it stands at time 0 */
  readonly start: number
}

/** The same both ways. (§6) */
export interface WalkSpec {
  /** indices of two different stations */
  readonly between: readonly [number, number]
  readonly seconds: number
}

/** A task of a station, and its time for each variant. (§5) */
export interface TaskSpec {
  /** index into LineSpec.tasks */
  readonly task: number
  /** one entry per variant; null: that variant has no such task here */
  readonly seconds: readonly (Distribution | null)[]
}

/** Which variant product k is. Shares are positive weights, one per variant (0: never). (§8) */
export type MixSpec =
  | { readonly kind: 'random'; readonly shares: readonly number[] }
  /** whole numbers */
  | { readonly kind: 'levelled'; readonly shares: readonly number[] }
  /** variant indices, repeated for ever */
  | { readonly kind: 'pattern'; readonly sequence: readonly number[] }
  /** variant indices; when it has run out there are no more products */
  | { readonly kind: 'list'; readonly sequence: readonly number[] }

/** One source of breakdowns of one part. (§7) */
export interface BreakdownSpec {
  /** names its streams `down/<name>` and `repair/<name>` */
  readonly name: string
  readonly part: BreakdownPart
  readonly clock: 'operating' | 'calendar'
  readonly timeToFailureSeconds: Distribution
  readonly repairSeconds: Distribution
}

/** `index`: of the station, of the zone (also for a transfer), or of the section. */
export type BreakdownPart =
  | { readonly kind: 'station'; readonly index: number }
  | { readonly kind: 'zone'; readonly index: number }
  | { readonly kind: 'transfer'; readonly index: number }
  | { readonly kind: 'section'; readonly index: number }

/** A break of all operators; seconds from the start of the run. (§7) */
export interface BreakSpec {
  readonly startSeconds: number
  readonly lengthSeconds: number
}

/** What counts: (warm-up, end]; seconds from the start of the run. (§10) */
export interface WindowSpec {
  readonly warmupSeconds: number
  readonly endSeconds: number
}
