/** What state a station, a zone or a carrier is in, judged from the state of the line. (MODEL.md §11) */
import { CARRIER_STATES, STATION_STATES, ZONE_STATES } from './result.ts'
import {
  BRAKING,
  CLAIMED,
  DONE,
  FREE,
  type Line,
  LOAD_DUTY,
  LOOKING,
  MOVING,
  NONE,
  OCCUPIED,
  RELEASING,
  VACATING,
  WORK_PENDING,
  WORKING,
} from './state.ts'

const S_WORKING = STATION_STATES.indexOf('working')
const S_HANDLING = STATION_STATES.indexOf('handling')
const S_NO_OPERATOR = STATION_STATES.indexOf('waiting for operator')
const S_NO_RECEIVER = STATION_STATES.indexOf('waiting for receiver')
const S_NO_PRODUCT = STATION_STATES.indexOf('waiting for product')
const S_BLOCKED = STATION_STATES.indexOf('blocked')
const S_EXCHANGING = STATION_STATES.indexOf('exchanging')
const S_STARVED = STATION_STATES.indexOf('starved')
const S_STOPPED = STATION_STATES.indexOf('stopped')
const S_BREAK = STATION_STATES.indexOf('break')

/** Place in STATION_STATES: break before stopped, then in the order listed. */
export function stationState(line: Line, station: number): number {
  if (line.breaksNow > 0 && line.stationBreaks[station] === 1) return S_BREAK
  const zone = line.stationZone[station]!
  if (line.stationHeld[station]! > 0) return S_STOPPED
  const carrier = line.zoneCarrier[zone]!
  const phase = carrier === NONE ? MOVING : line.carrierPhase[carrier]!
  const works = phase === WORKING || phase === RELEASING
  if (line.zoneHeld[zone]! > 0 && !works) return S_STOPPED
  if (works) return S_WORKING
  if (line.staff.stationHandling[station]! > 0) return S_HANDLING
  const state = line.zoneState[zone]!
  if (state === FREE) return S_STARVED
  if (state === CLAIMED || state === VACATING) return S_EXCHANGING
  if (phase === DONE) return S_BLOCKED
  if (phase !== WORK_PENDING) return S_EXCHANGING
  if (!line.hasCalls) return S_NO_PRODUCT
  if (line.calls.stationAside[station] === 1) return S_NO_OPERATOR
  return line.stationDuty[station] === LOAD_DUTY ? S_NO_PRODUCT : S_NO_RECEIVER
}

const Z_FREE = ZONE_STATES.indexOf('free')
const Z_CLAIMED = ZONE_STATES.indexOf('claimed')
const Z_WORKING = ZONE_STATES.indexOf('working')
const Z_BLOCKED = ZONE_STATES.indexOf('blocked')
const Z_OTHER = ZONE_STATES.indexOf('other')
const Z_VACATING = ZONE_STATES.indexOf('vacating')
const Z_STOPPED = ZONE_STATES.indexOf('stopped')

/** Place in ZONE_STATES. */
export function zoneState(line: Line, zone: number): number {
  if (line.zoneHeld[zone]! > 0) return Z_STOPPED
  switch (line.zoneState[zone]) {
    case FREE:
      return Z_FREE
    case CLAIMED:
      return Z_CLAIMED
    case OCCUPIED: {
      const phase = line.carrierPhase[line.zoneCarrier[zone]!]!
      if (phase === WORKING || phase === RELEASING) return Z_WORKING
      return phase === DONE ? Z_BLOCKED : Z_OTHER
    }
    default:
      return Z_VACATING
  }
}

const C_MOVING = CARRIER_STATES.indexOf('moving')
const C_WORKED = CARRIER_STATES.indexOf('worked on')
const C_WITH_PRODUCT = CARRIER_STATES.indexOf('waiting with product')
const C_EMPTY = CARRIER_STATES.indexOf('waiting empty')

/** Place in CARRIER_STATES. */
export function carrierState(line: Line, carrier: number): number {
  const phase = line.carrierPhase[carrier]!
  if (phase === MOVING || phase === LOOKING || phase === BRAKING) return C_MOVING
  if (phase === WORKING || phase === RELEASING) return C_WORKED
  return line.carrierSerial[carrier] === NONE ? C_EMPTY : C_WITH_PRODUCT
}
