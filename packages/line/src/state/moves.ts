/** Zones and carriers while they move: who is where, what is set aside, when what ends. (MODEL.md §2, §3) */
import type { WorkList } from './lists.ts'
import type { Slots } from './slots.ts'

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

/** `pathLooks`: the carrier will look at the end of its move; one more if the move began at speed. */
export const LOOK_FROM_REST = 1

/** How far the zone behind a move is. */
export const CLEAR_NOW = 0
export const CLEAR_TIMED = 1
export const CLEAR_KNOWN = 2

/** `clearSampler` of a path whose clear is the draw of its move. */
export const SAME_AS_MOVE = -2

/** Zone columns have a place for the store too. */
export interface Moves {
  readonly zoneState: Uint8Array
  /** carrier that counts as in the zone: from its move's start in to its start out; NONE */
  readonly zoneCarrier: Int32Array
  /** carrier that a claimed zone is set aside for, or that is on its way in; NONE unless claimed */
  readonly zoneClaimant: Int32Array
  /** whether it is clear of that carrier yet: CLEAR_NOW, CLEAR_TIMED (a timer runs) or CLEAR_KNOWN (at the time of its slot, which is not pending, looked up when somebody asks) */
  readonly zoneClearing: Uint8Array
  /** the path by which its last carrier left, which its clear belongs to; NONE; on a plain loop always the only one */
  readonly leavingPath: Int32Array
  /** moves started out of the place so far; not kept on a plain loop */
  readonly zoneStarts: Int32Array
  /** path of the last move start into the zone; NONE; not kept on a plain loop */
  readonly zoneLastIn: Int32Array
  /** the way out fixed for the carrier that is in the place or has it set aside; NONE: looked up at each attempt */
  readonly zoneWay: Int32Array
  /** carrier under way on the path (until it is at rest, or goes on); NONE, also on the way into the store, where there may be several */
  readonly pathCarrier: Int32Array
  /** LOOK_FROM_REST (+ 1 if it began at speed): the arrival on the way is a look, not yet a stop; else 0 */
  readonly pathLooks: Uint8Array
  /** 1: the clear of its move needs no timer until somebody waits for it, or a stop holds it */
  readonly clearIsPlain: Uint8Array
  /** derived times (motion.ts, Paces) */
  readonly pathPace: Int32Array
  readonly paceSeconds: Float64Array
  /** sampler of a given time; NONE: derived; SAME_AS_MOVE */
  readonly moveSampler: Int32Array
  readonly clearSampler: Int32Array
  readonly moveStream: Int32Array
  readonly clearStream: Int32Array
  readonly carrierPhase: Uint8Array
  /** place in which it counts */
  readonly carrierZone: Int32Array
  /** where it stands at time 0 */
  readonly startPlaces: Int32Array
  /** path by which it came to its place */
  readonly carrierPath: Int32Array
  /** instant since which it waits to move */
  readonly carrierSince: Float64Array
  /** carriers in the store, a ring from `storeFirst` on; the first one is in `zoneCarrier[store]` */
  readonly storeItems: Int32Array
  storeFirst: number
  storeCount: number
  /** places whose carrier may be able to start; on a plain loop a heap (moveHeap.ts) */
  readonly moveList: WorkList
  /** by place in the heap: since when its carrier waits, and where it stands */
  readonly moveSince: Float64Array
  readonly moveAt: Int32Array
  /** by place in the move list: the path along which it can start; scratch */
  readonly startPath: Int32Array
  /** carriers that look and have not gone on */
  readonly lookList: WorkList
}

/** What of a line says when zones are clear. */
export interface ClearsOf {
  readonly now: number
  readonly moves: Pick<Moves, 'zoneClearing'>
  readonly queue: { readonly times: Float64Array }
  readonly slots: Pick<Slots, 'clearSlot'>
}

/** Whether the zone has been clear since the time of its clear and counts as vacating still, since nobody has asked. (MODEL.md §3) */
export function isClearOver({ moves, now, queue, slots }: ClearsOf, zone: number): boolean {
  return moves.zoneClearing[zone] === CLEAR_KNOWN && queue.times[slots.clearSlot + zone]! <= now
}
