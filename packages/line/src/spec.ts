/**
 * The complete description of a line, as the engine reads it: every field present, seconds, metres, metres per second, indices instead of names.
 * `null` is a value ("there is none"), never a gap. What the fields mean is in MODEL.md, whose sections are named here.
 */
import type { Distribution } from '@loopwright/stats'

export interface LineSpec {
  /** Zones in travel order. Index = place in this list. (§1) */
  readonly zones: readonly ZoneSpec[]
  /** Paths in order of their index; on a closed loop path i leaves zone i. (§1) */
  readonly paths: readonly PathSpec[]
  readonly carriers: CarriersSpec
  /** ε, seconds, ≥ 0: from the sensor's change to the drive's start. (§3) */
  readonly reactionSeconds: number
  /** δ, seconds, ≥ 0: stagger of a train release. (§3) */
  readonly staggerSeconds: number
  /** Stations in order of their index. (§5) */
  readonly stations: readonly StationSpec[]
  /** Names of all tasks; duties refer to them by index. (§5) */
  readonly tasks: readonly string[]
  /** Names of all variants; times and shares follow this order. At least one. (§8) */
  readonly variants: readonly string[]
  readonly mix: MixSpec
  /** Breakdown sources in order of their index; names are unique. (§7) */
  readonly breakdowns: readonly BreakdownSpec[]
  /** Breaks, by start. (§7) */
  readonly breaks: readonly BreakSpec[]
  readonly conveyorDuringBreaks: boolean
  /** Statistics cover (warmupSeconds, endSeconds]. (§10) */
  readonly window: WindowSpec
}

export interface ZoneSpec {
  readonly name: string
  /** metres, > 0; null only where every path into the zone has given times or its own distance */
  readonly lengthMetres: number | null
  /** o, metres, ≥ 0: how far the presence sensor lies before the stop point. (§3) */
  readonly sensorBeforeStopMetres: number
  readonly release: 'single' | 'train'
  readonly transfer: TransferSpec | null
}

/** A lifting belt unit. (§4) */
export interface TransferSpec {
  readonly liftSeconds: number
  readonly lowerSeconds: number
  readonly enterOnlyIfExitClear: boolean
}

export type Position = 'low' | 'high'

/** A way from one zone to the next. (§3) */
export interface PathSpec {
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
}

export interface CarriersSpec {
  /** N ≥ 1 */
  readonly count: number
  /** ℓ, metres, > 0; null only where nothing is derived from it */
  readonly lengthMetres: number | null
  readonly widthMetres: number | null
  /** where they stand at time 0: a rule, so that another count can be tried; or a list of zone indices, one per carrier. (§10) */
  readonly start: 'spread' | 'packed' | readonly number[]
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
  /** works without an operator */
  readonly automatic: boolean
  /** only an automatic station can. (§7) */
  readonly worksInBreaks: boolean
}

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

/** `index`: of the station, or of the zone (also for a transfer); `line` is the one section that holds all zones. */
export type BreakdownPart =
  | { readonly kind: 'station'; readonly index: number }
  | { readonly kind: 'zone'; readonly index: number }
  | { readonly kind: 'transfer'; readonly index: number }
  | { readonly kind: 'line' }

export interface BreakSpec {
  readonly startSeconds: number
  readonly lengthSeconds: number
}

export interface WindowSpec {
  readonly warmupSeconds: number
  readonly endSeconds: number
}
