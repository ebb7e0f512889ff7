/** What one run tells. Plain data, seconds; it covers the window (warmupSeconds, endSeconds]. (MODEL.md §11) */

export const STATION_STATES = [
  'working',
  'handling',
  'waiting for operator',
  'waiting for product',
  'waiting for receiver',
  'blocked',
  'exchanging',
  'starved',
  'stopped',
  'break',
] as const
/** One of STATION_STATES. */
export type StationState = (typeof STATION_STATES)[number]
/** Something of a station for each of its states, such as seconds, or a share of the window. */
export type ByStationState<T = number> = Readonly<Record<StationState, T>>

/** The states of a zone, in the order of all that is told of them. */
export const ZONE_STATES = ['free', 'claimed', 'working', 'blocked', 'other', 'vacating', 'stopped'] as const
/** `working`, `blocked` and `other` split the zone's `occupied`. */
export type ZoneState = (typeof ZONE_STATES)[number]
/** A number for each state of a zone. */
export type ByZoneState = Readonly<Record<ZoneState, number>>

/** The states of a carrier, in the order of all that is told of them. */
export const CARRIER_STATES = ['moving', 'worked on', 'waiting with product', 'waiting empty'] as const
/** One of CARRIER_STATES. */
export type CarrierState = (typeof CARRIER_STATES)[number]
/** A number for each state of a carrier. */
export type ByCarrierState = Readonly<Record<CarrierState, number>>

/** What one run tells: counts and seconds of its window, by part. */
export interface RunResult {
  readonly seed: string
  readonly replication: number
  readonly window: { readonly warmupSeconds: number; readonly endSeconds: number }
  readonly end: RunEnd
  /** products loaded in the window */
  readonly loads: number
  /** products taken off in the window, rejected ones not counted */
  readonly output: number
  /** rejections by inspections in the window; a product may be rejected more than once */
  readonly rejections: number
  /** rejected products taken off in the window */
  readonly rejectedTakenOff: number
  /** output per clock hour of the window (jobs per hour) */
  readonly outputPerHour: number
  /** outputs in each hour of the window; the last may be a part of an hour */
  readonly outputByHour: readonly number[]
  /** instants of all outputs in the window, seconds from time 0 */
  readonly outputSeconds: readonly number[]
  /** time between two move starts of one carrier out of the first unload station's zone (without one: zone 0) */
  readonly lap: TallyResult
  /** from load start to unload end, of good products taken off in the window */
  readonly timeInLine: TallyResult
  /** time average */
  readonly productsInLineMean: number
  readonly stations: readonly StationResult[]
  readonly zones: readonly ZoneResult[]
  readonly carriers: readonly CarrierResult[]
  /** time average of the carriers in the store; 0 where there is none */
  readonly storeMean: number
  /** supplies with arrivals: that of the line first, then by station */
  readonly supplies: readonly SupplyResult[]
  /** pushes and pulls ended in the window: named operators in their order, then stations with operators of their own and a manual path */
  readonly handlings: readonly HandlingResult[]
  readonly breakdowns: readonly BreakdownResult[]
  /** by station that has one; the name is the station's */
  readonly safetyStops: readonly BreakdownResult[]
  readonly breaks: { readonly count: number; readonly seconds: number }
  /** moves, work ends and so on handled from time 0 to the end */
  readonly events: number
}

/** Why a run ended, and who waited for whom if nothing could move. */
export interface RunEnd {
  readonly reason: 'end of window' | 'gridlock' | 'out of products'
  /** the instant it stood still; null at the end of the window */
  readonly atSeconds: number | null
  /** (zone, zone it waits for), by zone index */
  readonly waits: readonly (readonly [number, number])[]
  /** the first cycle met when the waits are followed from the lowest zone; empty where there is none */
  readonly cycle: readonly number[]
  /** zones whose station, or whose push or pull, waits for an operator who is not free */
  readonly unmanned: readonly number[]
}

/** mean, sd, min and max are null while count is too small to know them (sd: below 2) */
export interface TallyResult {
  readonly count: number
  readonly mean: number | null
  readonly sd: number | null
  readonly min: number | null
  readonly max: number | null
}

/** What one run tells of a station: counts, and seconds of the window in each state. */
export interface StationResult {
  readonly name: string
  /** seconds in each state, its names in the order of STATION_STATES; they sum to the window */
  readonly seconds: ByStationState
  /** longest unbroken time in `blocked` within the window */
  readonly longestBlockSeconds: number
  /** carriers let go (move starts out after a duty) in the window */
  readonly cycles: number
  /** `stopped` and `break` by cause; where causes overlap each counts the whole time */
  readonly stoppedBy: readonly { readonly cause: string; readonly seconds: number }[]
}

/** What one run tells of a zone: counts, and seconds of the window in each state. */
export interface ZoneResult {
  readonly name: string
  /** seconds in each state, its names in the order of ZONE_STATES; they sum to the window */
  readonly seconds: ByZoneState
  /** time average of the carriers in it, from a move's start in to its start out */
  readonly occupancyMean: number
  /** move starts out in the window */
  readonly movesOut: number
  /** `stopped` by cause; where causes overlap each counts the whole time */
  readonly stoppedBy: readonly { readonly cause: string; readonly seconds: number }[]
}

/** What one run tells of a carrier: seconds of the window in each state. */
export interface CarrierResult {
  /** seconds in each state, its names in the order of CARRIER_STATES; they sum to the window */
  readonly seconds: ByCarrierState
  readonly laps: number
}

/** What one run tells of a source of stops: how many, and seconds of the window. */
export interface BreakdownResult {
  readonly name: string
  /** stops begun in the window */
  readonly count: number
  /** time down within the window */
  readonly seconds: number
}

/** What one run tells of a supply: how many came, and who waited. */
export interface SupplyResult {
  readonly name: string
  /** products that came in the window, turned away or not */
  readonly arrivals: number
  /** of these, those that found the queue full */
  readonly turnedAway: number
  /** time average of the products in the queue; those set aside count until the work starts */
  readonly queueMean: number
  readonly queueMax: number
  /** from arrival to the start of the load, of products whose load starts in the window */
  readonly waiting: TallyResult
}

/** What one run tells of what operators moved by hand. */
export interface HandlingResult {
  /** name of the operator, or of the station whose own operator it is */
  readonly operator: string
  readonly count: number
  /** walking not counted */
  readonly seconds: number
}
