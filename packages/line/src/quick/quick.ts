/**
 * The common instants of a closed loop, without a list of what may start and without a judge: one timer ends, or several moves at once, and no stop has a say in what
 * follows. Since a zone of a loop is claimed by one carrier only, that is found in a few steps. State and columns are those of instant.ts, which handles every
 * other instant, every trace and every check; what is told is the same to the last bit. It has over 300 lines because it is one function with its columns in locals: at these
 * instants most of the time would go into calls. (MODEL.md §1, §3, §5, §11)
 */

import { assert } from '@loopwright/kernel'
import { isWaitedFor, timeClear, waitFor } from '../moves/clear.ts'
import {
  BLOCKED_SINCE,
  CARRIER_SINCE,
  CARRIER_WIDTH,
  LONGEST_BLOCK,
  OCCUPIED_SECONDS,
  OCCUPIED_SINCE,
  STATION_SINCE,
  STATION_WIDTH,
  ZONE_SINCE,
  ZONE_WIDTH,
} from '../telling/collect.ts'
import { dutyAhead } from '../moves/dutyAhead.ts'
import { standsStill } from '../instant/gridlock.ts'
import { handleDue } from '../instant/instant.ts'
import { PACE_CLEAR, SPEED } from '../moves/motion.ts'
import { stopsAtLook } from '../moves/move.ts'
import { makeRest, settleRests, stand, timeRest } from './quickRest.ts'
import { goesOn, startsStay } from './quickStay.ts'
import { canLeave, claimBehind, isHeldAhead, turnOut, waitsBehind } from './quickTransfer.ts'
import { AFTER_EXIT_CLEAR, EXIT_CLEAR, PLAIN_CLEAR, QUICK, type Quick, STOPS, TRANSFER, TURNS } from './quickZones.ts'
import { CARRIER_STATES, STATION_STATES, ZONE_STATES } from '../telling/result.ts'
import { settleFree } from './settle.ts'
import {
  BACK,
  BRAKING,
  CLAIMED,
  CLEAR_KNOWN,
  CLEAR_NOW,
  CLEAR_TIMED,
  DONE,
  FREE,
  type Line,
  LOAD_DUTY,
  LOOKS,
  MOVING,
  NONE,
  OCCUPIED,
  TO_WAY_OUT,
  VACATING,
} from '../instant/state.ts'
import { hasProduct } from '../goods/supply.ts'
import { endChange, startChange } from '../moves/transfer.ts'

const S_BLOCKED = STATION_STATES.indexOf('blocked')
const S_EXCHANGING = STATION_STATES.indexOf('exchanging')
const S_STARVED = STATION_STATES.indexOf('starved')
const S_BREAK = STATION_STATES.indexOf('break')
const S_STOPPED = STATION_STATES.indexOf('stopped')
const Z_FREE = ZONE_STATES.indexOf('free')
const Z_CLAIMED = ZONE_STATES.indexOf('claimed')
const Z_VACATING = ZONE_STATES.indexOf('vacating')
const C_MOVING = CARRIER_STATES.indexOf('moving')

/** Whether the slots that fall due together are moves, and clears, that no stay, stop or transfer has a say in; if so the clears are made: they go before all that starts. */
function areQuick(line: Line, flags: Uint8Array, count: number): boolean {
  const { due, arrivalSlot, clearSlot, workSlot, zoneHeld, zoneNext, zonePrevious } = line
  for (let k = 0; k < count; k++) {
    const slot = due[k]!
    if (slot < arrivalSlot || slot >= workSlot) return false
    const from = slot < clearSlot ? zoneNext[slot - arrivalSlot]! : zonePrevious[slot - clearSlot]!
    const to = zoneNext[from]!
    if ((flags[from]! & (QUICK + TRANSFER)) !== QUICK || zoneHeld[from]! + zoneHeld[to]! > 0) return false
    if (slot >= clearSlot) {
      if ((flags[to]! & TRANSFER) > 0) return false
      continue
    }
    const path = slot - arrivalSlot
    if (line.pathLooks[path] === 0 ? line.zoneStation[from] !== NONE : line.pathHeld[path] === 1 || stopsAtLook(line, path)) return false
  }
  for (let k = 0; k < count; k++) {
    const slot = due[k]!
    if (slot < clearSlot) continue
    line.zoneClearing[slot - clearSlot] = CLEAR_NOW
    line.zoneState[slot - clearSlot] = FREE
    line.activity--
  }
  return true
}

/** Leaves the only timer of an instant to instant.ts; of several none, since those before it are done with. */
function handOver(line: Line, quick: Quick, count: number): void {
  assert(count === 1, 'one of several timers of a quick instant is not quick')
  settleRests(line, quick)
  handleDue(line, 1)
}

/** Handles all instants up to `until`; the one at `line.now` has been handled. False: nothing follows, or nothing can move any more. */
export function runQuick(line: Line, quick: Quick, until: number): boolean {
  let goesOn = AGAIN
  while (goesOn === AGAIN) goesOn = runSome(line, quick, until)
  return goesOn === UP_TO
}

/** Instants handled in one call: a call that takes long goes on in code that was exchanged in its middle, which is slower. */
const SOME = 2_000
const OVER = 0
const UP_TO = 1
const AGAIN = 2

function runSome(line: Line, quick: Quick, until: number): number {
  const { queue, collector, due } = line
  const { times } = queue
  const { arrivalSlot, clearSlot, workSlot, changeSlot, zoneStation, stationZone, stationHeld, storeSlot, hasDuty } = line
  const { zoneState, zoneChange, zoneClearing, clearAt, zoneHeld, zoneCarrier, zoneClaimant, pathHeld, pathLooks, pathCarrier } = line
  const { carrierPhase, carrierPath, carrierZone, stationServed } = line
  const { lapZone, zoneSeconds, stationState, stationSeconds } = collector
  const { zoneState: zoneIs, carrierState: carrierIs, carrierSeconds, movesOut } = collector
  const lastZone = line.zones - 1
  const { flags, mayHold: held, restAt, restIsKnown } = quick
  const { pathPace, paceSeconds } = quick.paces
  for (let instant = 0; instant < SOME; instant++) {
    if (line.activity === quick.known || queue.firstTime() > until) {
      // nothing else is under way, or the part of the run is over: rests that are to come count then
      settleRests(line, quick)
      if (line.activity === 0 && standsStill(line)) return OVER
      if (queue.size === 0) return OVER
      if (queue.firstTime() > until) return UP_TO
    }
    const now = queue.firstTime()
    line.now = now
    let count = 1
    due[0] = queue.pop()
    while (queue.firstTime() === now) due[count++] = queue.pop()
    if (count > 1 && !areQuick(line, flags, count)) {
      settleRests(line, quick)
      handleDue(line, count)
      continue
    }
    for (let k = 0; k < count; k++) {
      const slot = due[k]!
      if (slot < arrivalSlot || slot >= storeSlot) {
        handOver(line, quick, count)
        continue
      }

      // what ends, and who may start because of it: the carrier in `from`
      let from = 0
      let atSpeed = 0
      if (slot < clearSlot || (slot >= workSlot && (slot < changeSlot || zoneChange[slot - changeSlot] === TO_WAY_OUT))) {
        const path = slot - arrivalSlot
        if (slot < clearSlot) from = path === lastZone ? 0 : path + 1
        else from = slot < changeSlot ? stationZone[slot - workSlot]! : slot - changeSlot
        const to = from === lastZone ? 0 : from + 1
        const flag = flags[from]!
        const nearExit = (flag & EXIT_CLEAR) > 0
        if ((flag & QUICK) === 0 || (held && (zoneHeld[from]! + zoneHeld[to]! > 0 || (nearExit && isHeldAhead(line, from))))) {
          handOver(line, quick, count)
          continue
        }
        const carrier = zoneCarrier[from]!
        const isFree = nearExit ? canLeave(line, from) : zoneState[to] === FREE || (zoneClearing[to] === CLEAR_KNOWN && clearAt[to]! <= now)
        if (slot < clearSlot && pathLooks[path]! > 0) {
          // a look at the end of a move: on at speed, or to rest
          const pace = pathPace[path]! + 2 * (pathLooks[path]! - LOOKS)
          const brake = paceSeconds[pace]! - paceSeconds[pace + SPEED]!
          if ((held && pathHeld[path] === 1) || (!isFree && brake === 0)) {
            handOver(line, quick, count)
            continue
          }
          line.events++
          if (!isFree) {
            carrierPhase[carrier] = BRAKING
            pathLooks[path] = 0
            // at rest before the zone ahead is clear, it changes nothing for others
            const rest = now + brake
            const clears =
              zoneState[to] !== VACATING
                ? Number.POSITIVE_INFINITY
                : zoneClearing[to] === CLEAR_KNOWN
                  ? clearAt[to]!
                  : times[clearSlot + to]!
            const station = zoneStation[from]!
            const isOff = station !== NONE && stationHeld[station]! > 0
            if (clears < rest || isOff || ((flag | flags[to]!) & TRANSFER) > 0) {
              times[slot] = rest
              queue.schedule(slot)
              continue
            }
            restAt[carrier] = rest
            restIsKnown[carrier] = 1
            quick.known++
            if (zoneClearing[to] === CLEAR_KNOWN) timeClear(line, to)
            continue
          }
          atSpeed = 1
          line.activity--
          pathCarrier[path] = NONE
        } else {
          // at rest, or a duty, the release or a turn to the way out has ended
          const station = zoneStation[from]!
          if (station !== NONE && (stationHeld[station]! > 0 || (hasDuty[3 * station + LOAD_DUTY] === 1 && !hasProduct(line)))) {
            handOver(line, quick, count)
            continue
          }
          line.events++
          line.activity--
          if (slot >= changeSlot) endChange(line, from)
          else if (slot >= workSlot) {
            if (goesOn(line, station, carrier)) continue
          } else {
            pathCarrier[path] = NONE
            zoneClaimant[from] = NONE
            zoneState[from] = OCCUPIED
            if (station !== NONE && startsStay(line, station, carrier)) continue
            if ((flag & TURNS) > 0 && line.zonePosition[from] !== line.pathFromPosition[from]) {
              turnOut(line, from, carrier)
              continue
            }
          }
          if (!isFree) {
            if (nearExit) waitFor(line, from)
            else if (zoneClearing[to] === CLEAR_KNOWN) timeClear(line, to)
            restAt[carrier] = now
            stand(line, quick, carrier)
            continue
          }
        }
      } else {
        // a zone is clear, or its transfer has turned back; of several slots the clears have been made
        const zone = slot < workSlot ? slot - clearSlot : slot - changeSlot
        const flag = flags[zone]!
        from = (flag & AFTER_EXIT_CLEAR) > 0 ? waitsBehind(line, zone) : zone === 0 ? lastZone : zone - 1
        const nearExit = (flags[from]! & EXIT_CLEAR) > 0
        const isHeld = held && (zoneHeld[from]! + zoneHeld[zone]! > 0 || (nearExit && isHeldAhead(line, from)))
        if ((flag & (QUICK + TURNS)) === TURNS || (flags[from]! & QUICK) === 0 || isHeld) {
          handOver(line, quick, count)
          continue
        }
        line.events++
        if (slot >= changeSlot) endChange(line, zone)
        if (count === 1) {
          zoneClearing[zone] = CLEAR_NOW
          line.activity--
          if (slot < workSlot && (flag & TURNS) > 0 && line.backPosition[zone] !== line.zonePosition[zone]) {
            line.zoneChange[zone] = BACK
            startChange(line, zone, NONE, 1)
            continue
          }
          zoneState[zone] = FREE
        } else if (zoneState[zone] !== FREE) continue
        const waiting = zoneCarrier[from]!
        if (waiting !== NONE && restIsKnown[waiting] === 1) {
          if (restAt[waiting]! <= now) makeRest(line, quick, waiting)
          else timeRest(line, quick, waiting)
        }
        let leaves = waiting !== NONE && carrierPhase[waiting] === DONE
        if (leaves && nearExit && !canLeave(line, from)) {
          waitFor(line, from)
          leaves = false
        }
        if (!leaves) {
          settleFree(line, zone)
          continue
        }
      }

      // the move starts: what is told of the zones, the carrier and the stations, then what becomes of them
      line.activity++
      const path = from
      const to = from === lastZone ? 0 : from + 1
      const flag = flags[from]!
      const carrier = zoneCarrier[from]!
      if (zoneClearing[to] === CLEAR_KNOWN) {
        const at = clearAt[to]!
        zoneClearing[to] = CLEAR_NOW
        line.events++
        zoneSeconds[to * ZONE_WIDTH + zoneIs[to]!]! += at - zoneSeconds[to * ZONE_WIDTH + ZONE_SINCE]!
        zoneSeconds[to * ZONE_WIDTH + ZONE_SINCE] = at
        zoneIs[to] = Z_FREE
        const station = zoneStation[to]!
        if (station !== NONE && stationState[station] === S_EXCHANGING) {
          stationSeconds[station * STATION_WIDTH + S_EXCHANGING]! += at - stationSeconds[station * STATION_WIDTH + STATION_SINCE]!
          stationSeconds[station * STATION_WIDTH + STATION_SINCE] = at
          stationState[station] = S_STARVED
        }
      }
      zoneSeconds[from * ZONE_WIDTH + OCCUPIED_SECONDS]! += now - zoneSeconds[from * ZONE_WIDTH + OCCUPIED_SINCE]!
      zoneSeconds[to * ZONE_WIDTH + OCCUPIED_SINCE] = now
      movesOut[from]!++
      zoneSeconds[from * ZONE_WIDTH + zoneIs[from]!]! += now - zoneSeconds[from * ZONE_WIDTH + ZONE_SINCE]!
      zoneSeconds[from * ZONE_WIDTH + ZONE_SINCE] = now
      zoneIs[from] = Z_VACATING
      zoneSeconds[to * ZONE_WIDTH + zoneIs[to]!]! += now - zoneSeconds[to * ZONE_WIDTH + ZONE_SINCE]!
      zoneSeconds[to * ZONE_WIDTH + ZONE_SINCE] = now
      zoneIs[to] = Z_CLAIMED
      if (carrierIs[carrier] !== C_MOVING) {
        carrierSeconds[carrier * CARRIER_WIDTH + carrierIs[carrier]!]! += now - carrierSeconds[carrier * CARRIER_WIDTH + CARRIER_SINCE]!
        carrierSeconds[carrier * CARRIER_WIDTH + CARRIER_SINCE] = now
        carrierIs[carrier] = C_MOVING
      }
      const stationLeft = zoneStation[from]!
      if (stationLeft !== NONE) {
        if (stationServed[stationLeft] === 1) {
          collector.cycles[stationLeft]!++
          stationServed[stationLeft] = 0
        }
        const is = stationState[stationLeft]!
        if (is !== S_EXCHANGING && is !== S_BREAK && is !== S_STOPPED) {
          stationSeconds[stationLeft * STATION_WIDTH + is]! += now - stationSeconds[stationLeft * STATION_WIDTH + STATION_SINCE]!
          stationSeconds[stationLeft * STATION_WIDTH + STATION_SINCE] = now
          if (is === S_BLOCKED) {
            const seconds = now - stationSeconds[stationLeft * STATION_WIDTH + BLOCKED_SINCE]!
            if (seconds > stationSeconds[stationLeft * STATION_WIDTH + LONGEST_BLOCK]!)
              stationSeconds[stationLeft * STATION_WIDTH + LONGEST_BLOCK] = seconds
          }
          stationState[stationLeft] = S_EXCHANGING
        }
      }
      if (from === lapZone) {
        collector.onLap(carrier)
      }
      let stops = (flag & STOPS) > 0
      const stationAhead = zoneStation[to]!
      if (stationAhead !== NONE) {
        if (dutyAhead(line, carrier, to)) stops = true
        const is = stationState[stationAhead]!
        if (is !== S_EXCHANGING && is !== S_BREAK && is !== S_STOPPED) {
          stationSeconds[stationAhead * STATION_WIDTH + is]! += now - stationSeconds[stationAhead * STATION_WIDTH + STATION_SINCE]!
          stationSeconds[stationAhead * STATION_WIDTH + STATION_SINCE] = now
          stationState[stationAhead] = S_EXCHANGING
        }
      }
      const isFirstClaim = zoneState[to] !== CLAIMED
      zoneState[from] = VACATING
      zoneClaimant[from] = NONE
      zoneCarrier[from] = NONE
      zoneState[to] = CLAIMED
      zoneClaimant[to] = carrier
      zoneCarrier[to] = carrier
      pathCarrier[path] = carrier
      carrierZone[carrier] = to
      carrierPath[carrier] = path
      carrierPhase[carrier] = MOVING
      const pace = pathPace[path]!
      if (stops) {
        pathLooks[path] = 0
        times[arrivalSlot + path] = now + paceSeconds[pace + 2 * atSpeed]!
      } else {
        pathLooks[path] = LOOKS + atSpeed
        times[arrivalSlot + path] = now + paceSeconds[pace + 2 * atSpeed + SPEED]!
      }
      queue.schedule(arrivalSlot + path)
      if ((flag & EXIT_CLEAR) > 0 && isFirstClaim) claimBehind(line, to, carrier)
      const behind = zoneCarrier[from === 0 ? lastZone : from - 1]!
      const clear = now + paceSeconds[pace + PACE_CLEAR + atSpeed]!
      const isAwaited =
        (flag & AFTER_EXIT_CLEAR) > 0
          ? isWaitedFor(line, from)
          : behind !== NONE && (carrierPhase[behind] === DONE || restIsKnown[behind] === 1)
      if ((flag & PLAIN_CLEAR) > 0 && !isAwaited) {
        zoneClearing[from] = CLEAR_KNOWN
        clearAt[from] = clear
      } else {
        zoneClearing[from] = CLEAR_TIMED
        line.activity++
        times[clearSlot + from] = clear
        queue.schedule(clearSlot + from)
      }
    }
  }
  return AGAIN
}
