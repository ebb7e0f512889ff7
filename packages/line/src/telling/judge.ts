/** What state a station, a zone or a carrier is in, judged from the state of the line. (MODEL.md §11) */
import {
  C_EMPTY,
  C_MOVING,
  C_WITH_PRODUCT,
  C_WORKED,
  S_BLOCKED,
  S_BREAK,
  S_EXCHANGING,
  S_HANDLING,
  S_NO_OPERATOR,
  S_NO_PRODUCT,
  S_NO_RECEIVER,
  S_STARVED,
  S_STOPPED,
  S_WORKING,
  Z_BLOCKED,
  Z_CLAIMED,
  Z_FREE,
  Z_OTHER,
  Z_STOPPED,
  Z_VACATING,
  Z_WORKING,
} from './states.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { BRAKING, CLAIMED, DONE, FREE, isClearOver, LOOKING, MOVING, RELEASING, VACATING, WORK_PENDING, WORKING } from '../state/moves.ts'
import { LOAD_DUTY } from '../state/work.ts'

const S_PENDING = S_NO_PRODUCT
const PHASES = 10

/** By state of a zone and phase of the carrier that counts in it (MOVING where there is none): looked up, since it cannot be foreseen. */
function table(judge: (state: number, phase: number) => number): Uint8Array {
  return Uint8Array.from({ length: 4 * PHASES }, (_, k) => judge(Math.floor(k / PHASES), k % PHASES))
}

function phaseIn(line: Line, zone: number): number {
  const carrier = line.moves.zoneCarrier[zone]!
  return carrier === NONE ? MOVING : line.moves.carrierPhase[carrier]!
}

/** A clear that is over counts, whether or not somebody has asked for it yet. */
const stateNow = (line: Line, zone: number): number => (isClearOver(line, zone) ? FREE : line.moves.zoneState[zone]!)

const works = (phase: number): boolean => phase === WORKING || phase === RELEASING

const STATION_TABLE = table((state, phase) => {
  if (works(phase)) return S_WORKING
  if (state === FREE) return S_STARVED
  if (state === CLAIMED || state === VACATING) return S_EXCHANGING
  if (phase === DONE) return S_BLOCKED
  return phase === WORK_PENDING ? S_PENDING : S_EXCHANGING
})

/** Place in STATION_STATES: break before stopped, then in the order listed. */
export function stationState(line: Line, station: number): number {
  if (line.stops.breaksNow > 0 && line.stops.stationBreaks[station] === 1) return S_BREAK
  const zone = line.work.stationZone[station]!
  if (line.stops.stationHeld[station]! > 0) return S_STOPPED
  const state = STATION_TABLE[PHASES * stateNow(line, zone) + phaseIn(line, zone)]!
  if (state === S_WORKING) return S_WORKING
  if (line.stops.zoneHeld[zone]! > 0) return S_STOPPED
  if (line.staff.stationHandling[station]! > 0) return S_HANDLING
  if (state !== S_PENDING || !line.hasCalls) return state
  if (line.calls.stationAside[station] === 1) return S_NO_OPERATOR
  return line.work.stationDuty[station] === LOAD_DUTY ? S_NO_PRODUCT : S_NO_RECEIVER
}

const ZONE_TABLE = table((state, phase) => {
  if (state === FREE) return Z_FREE
  if (state === CLAIMED) return Z_CLAIMED
  if (state === VACATING) return Z_VACATING
  if (works(phase)) return Z_WORKING
  return phase === DONE ? Z_BLOCKED : Z_OTHER
})

/** Place in ZONE_STATES. */
export function zoneState(line: Line, zone: number): number {
  return line.stops.zoneHeld[zone]! > 0 ? Z_STOPPED : ZONE_TABLE[PHASES * stateNow(line, zone) + phaseIn(line, zone)]!
}

const CARRIER_TABLE = Uint8Array.from({ length: 2 * PHASES }, (_, k) => {
  const phase = Math.floor(k / 2)
  if (phase === MOVING || phase === LOOKING || phase === BRAKING) return C_MOVING
  if (works(phase)) return C_WORKED
  return k % 2 === 1 ? C_EMPTY : C_WITH_PRODUCT
})

/** Place in CARRIER_STATES of a carrier that stands and is not worked on. */
export function waitingState(line: Line, carrier: number): number {
  return line.goods.carrierSerial[carrier] === NONE ? C_EMPTY : C_WITH_PRODUCT
}

/** Place in CARRIER_STATES. */
export function carrierState(line: Line, carrier: number): number {
  return CARRIER_TABLE[2 * line.moves.carrierPhase[carrier]! + Number(line.goods.carrierSerial[carrier] === NONE)]!
}
