import { RunningHash } from '@loopwright/kernel'

/** What can happen, in the words of MODEL.md. The numbers are places in this list. */
export const TRACE_KINDS = [
  'move start',
  'clear',
  'look',
  'brake',
  'rest',
  'duty start',
  'duty end',
  'release start',
  'release end',
  'change start',
  'change end',
  'load',
  'unload',
  'stop begin',
  'stop end',
  'break begin',
  'break end',
  'standstill',
  'operator sent',
  'operator there',
  'operator free',
  'product arrival',
  'turned away',
  'receiver start',
  'receiver end',
  'reject',
  'repair start',
] as const
/** One of TRACE_KINDS. */
export type TraceKind = (typeof TRACE_KINDS)[number]

export const MOVE_START = 0
export const CLEAR = 1
export const LOOK = 2
export const BRAKE = 3
export const AT_REST = 4
export const DUTY_START = 5
export const DUTY_END = 6
export const RELEASE_START = 7
export const RELEASE_END = 8
export const CHANGE_START = 9
export const CHANGE_END = 10
export const LOAD = 11
export const UNLOAD = 12
export const STOP_BEGIN = 13
export const STOP_END = 14
export const BREAK_BEGIN = 15
export const BREAK_END = 16
export const STANDSTILL = 17
export const OPERATOR_SENT = 18
export const OPERATOR_THERE = 19
export const OPERATOR_FREE = 20
export const PRODUCT_ARRIVAL = 21
export const TURNED_AWAY = 22
export const RECEIVER_START = 23
export const RECEIVER_END = 24
export const REJECT = 25
export const REPAIR_START = 26

/**
 * The events of a run in order: `kinds[k]` at `seconds[k]`, with
 * `place` (zone; STORE for `rest` in the store; path for `move start`; station for duties, releases, operators and receivers; for stops the breakdown source,
 * and past them the safety stops by station; supply for products; −1 for breaks and standstill),
 * `carrier` (−1 where there is none) and
 * `detail` (`move start`: 0 from rest, 1 at speed; duties: 0 unload, 1 load, 2 work; `change start` and `change end`: 0 to the way out, 1 back, 2 to the way in of the carrier that has won the transfer; `load`, `unload`, `reject`: serial; operators: who; products: how many came before; else 0).
 */
export class Trace {
  readonly seconds: number[] = []
  readonly kinds: number[] = []
  readonly places: number[] = []
  readonly carriers: number[] = []
  readonly details: number[] = []
  readonly hash = new RunningHash()

  get length(): number {
    return this.kinds.length
  }

  reset(): void {
    for (const column of [this.seconds, this.kinds, this.places, this.carriers, this.details]) column.length = 0
    this.hash.reset()
  }

  add(seconds: number, kind: number, place: number, carrier: number, detail: number): void {
    this.seconds.push(seconds)
    this.kinds.push(kind)
    this.places.push(place)
    this.carriers.push(carrier)
    this.details.push(detail)
    this.hash.addNumber(seconds)
    this.hash.addInteger(kind)
    this.hash.addInteger(place)
    this.hash.addInteger(carrier)
    this.hash.addInteger(detail)
  }
}
