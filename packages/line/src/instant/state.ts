/**
 * The line while it runs, as arrays by index: zones, paths, carriers, stations, breakdown sources. `build.ts` makes it from a LineSpec and fills what never
 * changes; the files named after a noun (`zone.ts`, `move.ts`, `station.ts`, `stop.ts`) change the rest. It has over 300 lines because each column is explained here.
 */
import type { TimerQueue } from '@loopwright/kernel'
import type { SamplerTable, StreamTable } from '@loopwright/stats'
import type { Supply } from '../goods/arrivals.ts'
import type { Collector } from '../telling/collect.ts'
import type { LineSpec } from '../spec.ts'
import type { Trace } from '../telling/trace.ts'

export const NONE = -1

/** Zone states. (MODEL.md §2) */
export const FREE = 0
export const CLAIMED = 1
export const OCCUPIED = 2
export const VACATING = 3

/** What a carrier is doing. */
export const DONE = 0
export const MOVING = 1
/** at the end of a move at speed, looking whether it can go on */
export const LOOKING = 2
export const BRAKING = 3
/** the next duty can start but for a stop or a product */
export const WORK_PENDING = 4
export const WORKING = 5
export const RELEASE_PENDING = 6
export const RELEASING = 7
/** the transfer under it has to change to the way out but for a stop */
export const CHANGE_PENDING = 8
export const CHANGING = 9

/** Duties, in their order. (MODEL.md §5) */
export const UNLOAD_DUTY = 0
export const LOAD_DUTY = 1
export const WORK_DUTY = 2

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

/** Which of several ways out is taken. (MODEL.md §3) */
export const FIRST = 0
export const ALTERNATE = 1
export const FIRST_FREE = 2

/** Whether the zone at the end of a path stops a carrier that has no work there. */
export const STOPS_NEVER = 0
export const STOPS_ALWAYS = 1
export const STOPS_PERHAPS = 2

/** `pathLooks`: the carrier will look at the end of its move; one more if the move began at speed. */
export const LOOKS = 1

/** How far the zone behind a move is. */
export const CLEAR_NOW = 0
export const CLEAR_TIMED = 1
export const CLEAR_KNOWN = 2

/** Which products an unload takes off. */
export const ACCEPTS_GOOD = 0
export const ACCEPTS_REJECTED = 1
export const ACCEPTS_ALL = 2

/** How a sampler is fed. */
export const USES_NOTHING = 0
export const USES_UNIFORM = 1
export const USES_INDEX = 2

/** `clearSampler` of a path whose clear is the draw of its move. */
export const SAME_AS_MOVE = -2

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

/** Supplies and receivers (arrivals.ts, receiver.ts). */
export interface Goods {
  readonly supplySlot: number
  readonly receiverSlot: number
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

/** Repair crews (crew.ts); kept only where they may be short. */
export interface Crew {
  readonly crews: number
  crewsBusy: number
  /** true: a crew may be given out */
  crewDue: boolean
  readonly sourceWaits: Uint8Array
  readonly failedAt: Float64Array
}

/** Samplers and streams of the sources: seconds to the next failure, and of its repair; length sources. */
export interface Failures {
  readonly sourceFailure: Int32Array
  readonly sourceRepair: Int32Array
  readonly failureStream: Int32Array
  readonly repairStream: Int32Array
}

/** Safety stops (safety.ts). */
export interface Safety {
  readonly safetySlot: number
  /** by path: station that watches its moves; NONE */
  readonly pathSafety: Int32Array
  /** stations with a safety stop, ascending; and where each stands in that list, by station */
  readonly safetyStations: Int32Array
  readonly safetyOf: Int32Array
  readonly safetyProbability: Float64Array
  readonly safetyStream: Int32Array
  readonly resetSampler: Int32Array
  readonly resetStream: Int32Array
  /** by carrier: station that watches its move */
  readonly watchStation: Int32Array
  /** by slot of a reset: the station */
  readonly resetStation: Int32Array
  /** stops under way, by place in `safetyStations` */
  readonly safetyActive: Int32Array
}

/** Zones whose drives stop together (sections.ts). */
export interface Sections {
  readonly sectionClocks: PartList
  /** by section: zones that operate now */
  readonly sectionOperates: Int32Array
  /** section of a zone; NONE */
  readonly zoneSection: Int32Array
  readonly sectionZones: PartList
}

export interface Line {
  readonly spec: LineSpec
  // Sizes
  readonly zones: number
  /** index of the store, one past the last zone: it has a place in the columns of the zones, is always free and never held */
  readonly store: number
  readonly paths: number
  readonly carriers: number
  readonly stations: number
  readonly tasks: number
  readonly variants: number
  readonly sources: number
  /** named ones first, then those of stations that push or pull */
  readonly operators: number

  // Clock and timers. Slots: breakdown sources, then the breaks, safety stops and their resets by carrier, then arrivals by path, clears by zone, work by station,
  // changes by zone, arrivals in the store by carrier, walks by operator, products by supply, receivers by station.
  /** seconds; the instant being handled */
  now: number
  readonly queue: TimerQueue
  readonly breakSlot: number
  readonly resetSlot: number
  readonly arrivalSlot: number
  readonly clearSlot: number
  readonly workSlot: number
  readonly changeSlot: number
  readonly storeSlot: number
  readonly operatorSlot: number
  /** seconds left of a timer that is held; length slots; meaning only while isHeldBack */
  readonly left: Float64Array
  /** 1: the timer is held and goes on with `left` */
  readonly isHeldBack: Uint8Array
  /** slots that fall due at one instant, sorted before they are handled */
  readonly due: Int32Array
  events: number

  // Randomness
  readonly streams: StreamTable
  readonly samplers: SamplerTable
  /** USES_… of each sampler */
  readonly samplerUses: Uint8Array
  /** the last time drawn, seconds on the grid; length 1: a number in a place of its own is never boxed */
  readonly drawn: Float64Array
  /** draws taken so far from the replay list of a stream; length streams */
  readonly streamUses: Int32Array

  // The graph (graph.ts); zones and store together are the places
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
  /** moves started out of the place so far; not kept on a plain loop */
  readonly zoneStarts: Int32Array
  /** the way out fixed for the carrier that is in the place or has it set aside; NONE: looked up at each attempt */
  readonly zoneWay: Int32Array
  /** 1: the merge into the zone alternates */
  readonly mergeAlternates: Uint8Array
  /** path of the last move start into the zone; NONE; not kept on a plain loop */
  readonly zoneLastIn: Int32Array
  /** place of the path in the priority list of its end; 0 where there is none; length paths */
  readonly mergeRank: Int32Array
  /** true: some zone has another merge than `waiting` */
  readonly hasMerges: boolean
  /** by place in the move list: the path along which it can start; scratch */
  readonly startPath: Int32Array
  /** carriers in the store, a ring from `storeFirst` on; the first one is in `zoneCarrier[store]` */
  readonly storeItems: Int32Array
  storeFirst: number
  storeCount: number

  // Zones, length zones (and one for the store)
  readonly zoneState: Uint8Array
  /** carrier that counts as in the zone: from its move's start in to its start out; NONE */
  readonly zoneCarrier: Int32Array
  /** carrier that a claimed zone is set aside for, or that is on its way in; NONE unless claimed */
  readonly zoneClaimant: Int32Array
  /** stops that hold the zone */
  readonly zoneHeld: Int32Array
  readonly zoneStation: Int32Array
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
  /** 1: a transfer entered only if its exit is clear */
  readonly exitClear: Uint8Array
  /** the path by which its last carrier left, which its clear belongs to; NONE; on a plain loop always the only one */
  readonly leavingPath: Int32Array
  /** whether it is clear of that carrier yet: CLEAR_NOW, CLEAR_TIMED (a timer runs) or CLEAR_KNOWN (at `clearAt`, looked up when somebody asks) */
  readonly zoneClearing: Uint8Array
  /** seconds; instant of a CLEAR_KNOWN */
  readonly clearAt: Float64Array

  // Paths, length paths
  /** carrier under way on the path (until it is at rest, or goes on); NONE, also on the way into the store, where there may be several */
  readonly pathCarrier: Int32Array
  /** 1: no stop can hold the move and no clock runs with it, so that its clear needs no timer until somebody waits for it */
  readonly clearIsPlain: Uint8Array
  /** 1: a stop holds one of its ends */
  readonly pathHeld: Uint8Array
  /** LOOKS (+ 1 if it began at speed): the arrival on the way is a look, not yet a stop; else 0 */
  readonly pathLooks: Uint8Array
  /** STOPS_…: whether its end stops a carrier without work there */
  readonly pathStops: Uint8Array
  /** LOW or HIGH: what a transfer at its ends must stand at */
  readonly pathFromPosition: Uint8Array
  readonly pathToPosition: Uint8Array
  /** derived times (motion.ts, Paces) */
  readonly pathPace: Int32Array
  readonly paceSeconds: Float64Array
  /** sampler of a given time; NONE: derived; SAME_AS_MOVE */
  readonly moveSampler: Int32Array
  readonly clearSampler: Int32Array
  readonly moveStream: Int32Array
  readonly clearStream: Int32Array

  // Carriers, length carriers
  readonly carrierPhase: Uint8Array
  /** place in which it counts */
  readonly carrierZone: Int32Array
  /** path by which it came to its place */
  readonly carrierPath: Int32Array
  /** instant since which it waits to move */
  readonly carrierSince: Float64Array
  /** serial of its product; NONE: empty */
  readonly carrierSerial: Int32Array
  readonly carrierVariant: Int32Array
  readonly carrierLoaded: Float64Array
  /** 1: the product has had the task; length carriers · tasks */
  readonly taskDone: Uint8Array

  // Stations, length stations
  readonly stationZone: Int32Array
  /** duty under way or next */
  readonly stationDuty: Uint8Array
  /** stops and breaks that hold the station */
  readonly stationHeld: Int32Array
  /** 1: the carrier here has had a duty */
  readonly stationServed: Uint8Array
  readonly stationBreaks: Uint8Array
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

  // What only some lines have, in objects of their own: an object of too many places is slow
  /** true: some station has operators that are kept, products arrive, or there is a receiver */
  readonly hasCalls: boolean

  /** by path: station whose operator moves the carrier; NONE: the drive does */
  readonly manualStation: Int32Array

  /** true: there are inspections or tasks marked rework */
  readonly hasRejects: boolean
  /** 1: the carrier holds a rejected product */
  readonly carrierRejected: Uint8Array
  /** ACCEPTS_…, by station: products that its unload takes off */
  readonly stationAccepts: Uint8Array

  readonly calls: Calls
  readonly staff: Staff
  readonly rejects: Rejects
  readonly goods: Goods
  readonly crew: Crew
  readonly safety: Safety
  readonly sections: Sections

  // Supply and mix
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
  readonly taskStream: Int32Array
  /** draws of the tasks by serial, a ring for each task, drawn in blocks; length tasks · taskRoom */
  taskUniforms: Float64Array
  taskRoom: number
  /** no product in the line has a lower one; looked up anew where the rings are full */
  oldestSerial: number
  /** draws made so far, by task */
  readonly taskDrawn: Int32Array
  /** by task: what its ring holds (draw.ts) */
  readonly taskAhead: Int32Array

  // Stops: sources, and who they hold
  readonly sourceDown: Uint8Array
  readonly sourceCalendar: Uint8Array
  readonly failures: Failures
  /** operating clock: seconds left to the failure while it does not run; while it runs without a timer, the instant at which it would run out */
  readonly sourceLeft: Float64Array
  /** 1: it runs without a timer, since what operates ends before */
  readonly sourceRuns: Uint8Array
  /** sources with an operating clock, by part: stations, zones, transfers, sections */
  readonly stationClocks: PartList
  readonly zoneClocks: PartList
  readonly transferClocks: PartList
  /** true: a zone or a section has an operating clock, so that operation of zones is followed */
  readonly followsZones: boolean
  /** things that make the zone operate now */
  readonly zoneOperates: Int32Array
  /** 1: the move counts for its zone of arrival (of departure) */
  readonly operatesIn: Uint8Array
  readonly operatesOut: Uint8Array
  readonly operatesChange: Uint8Array
  readonly hasCrews: boolean
  readonly hasSafety: boolean
  /** breaks under way */
  breaksNow: number
  readonly breakTimes: Float64Array
  /** +1 begins, −1 ends */
  readonly breakSteps: Int8Array
  breakNext: number

  // What may start next
  readonly workList: WorkList
  /** places whose carrier may be able to start; on a plain loop a heap (moveHeap.ts) */
  readonly moveList: WorkList
  /** by place in the heap: since when its carrier waits, and where it stands */
  readonly moveSince: Float64Array
  readonly moveAt: Int32Array
  readonly changeList: WorkList
  /** carriers that look and have not gone on */
  readonly lookList: WorkList
  /** moves, work, releases and changes under way, held ones too */
  activity: number

  readonly collector: Collector
  trace: Trace | null
}

/** Lists of whole numbers by part: those of part k are `items[first[k]] … items[first[k + 1] − 1]`. */
export interface PartList {
  readonly first: Int32Array
  readonly items: Int32Array
}

/** A set of indices that remembers the order of nothing: add is idempotent, taking is by the caller's rule. */
export interface WorkList {
  readonly items: Int32Array
  readonly isIn: Uint8Array
  length: number
}

export function makeWorkList(capacity: number): WorkList {
  return { items: new Int32Array(capacity + 1), isIn: new Uint8Array(capacity), length: 0 }
}

/** Written behind the last entry in any case, and counted if it was not in: whether it was cannot be foreseen, and a branch that is guessed wrong costs more. */
export function addTo(list: WorkList, index: number): void {
  list.items[list.length] = index
  list.length += 1 - list.isIn[index]!
  list.isIn[index] = 1
}

/** Takes out the entry at `place`; the last one takes its place. */
export function takeAt(list: WorkList, place: number): void {
  list.isIn[list.items[place]!] = 0
  list.items[place] = list.items[--list.length]!
}

export function clearList(list: WorkList): void {
  list.isIn.fill(0)
  list.length = 0
}

/** Whether the zone has been clear since `clearAt` and counts as vacating still, since nobody has asked. (MODEL.md §3) */
export function isClearOver({ zoneClearing, clearAt, now }: Pick<Line, 'zoneClearing' | 'clearAt' | 'now'>, zone: number): boolean {
  return zoneClearing[zone] === CLEAR_KNOWN && clearAt[zone]! <= now
}
