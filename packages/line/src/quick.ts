/**
 * The common instants of a closed loop, without a list of what may start and without a judge: one timer ends, or several moves at once, and no stop has a say in what
 * follows. Since a zone of a loop is claimed by one carrier only, that is found in a few steps. State and columns are those of instant.ts, which handles every
 * other instant, every trace and every check; what is told is the same to the last bit. One function with its columns in locals, over 300 lines long: at these
 * instants most of the time would go into calls. (MODEL.md §1, §3, §5, §11)
 */

import { assert } from '@loopwright/kernel'
import { isWaitedFor, timeClear, waitFor } from './clear.ts'
import { CARRIER_WIDTH, STATION_WIDTH, ZONE_WIDTH } from './collect.ts'
import { dutyAhead } from './dutyAhead.ts'
import { standsStill } from './gridlock.ts'
import { handleDue } from './instant.ts'
import { SPEED } from './motion.ts'
import { canLeave, claimBehind, endTurn, isHeldAhead, turnOut, waitsBehind } from './quickTransfer.ts'
import { AFTER_EXIT_CLEAR, EXIT_CLEAR, mayHold, PLAIN_CLEAR, QUICK, STOPS, TRANSFER, TURNS } from './quickZones.ts'
import { CARRIER_STATES, STATION_STATES, ZONE_STATES } from './result.ts'
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
  MOVING,
  NONE,
  OCCUPIED,
  RELEASING,
  TO_WAY_OUT,
  UNLOAD_DUTY,
  VACATING,
} from './state.ts'
import { endDuty, firstDuty, startDuty, startRelease } from './station.ts'
import { hasProduct } from './supply.ts'
import { addToTally, VALUE } from './tally.ts'
import { startChange } from './transfer.ts'

const S_BLOCKED = STATION_STATES.indexOf('blocked')
const S_EXCHANGING = STATION_STATES.indexOf('exchanging')
const S_WORKING = STATION_STATES.indexOf('working')
const S_STARVED = STATION_STATES.indexOf('starved')
const S_BREAK = STATION_STATES.indexOf('break')
const S_STOPPED = STATION_STATES.indexOf('stopped')
const Z_FREE = ZONE_STATES.indexOf('free')
const Z_CLAIMED = ZONE_STATES.indexOf('claimed')
const Z_WORKING = ZONE_STATES.indexOf('working')
const Z_BLOCKED = ZONE_STATES.indexOf('blocked')
const Z_VACATING = ZONE_STATES.indexOf('vacating')
const C_MOVING = CARRIER_STATES.indexOf('moving')
const C_WORKED = CARRIER_STATES.indexOf('worked on')
const C_WITH_PRODUCT = CARRIER_STATES.indexOf('waiting with product')
const C_EMPTY = CARRIER_STATES.indexOf('waiting empty')

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
    if (line.pathLooks[path] === 0 ? line.zoneStation[from] !== NONE : line.pathHeld[path] === 1 || line.pathBrake[path] === 0) return false
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
function handOver(line: Line, count: number): void {
  assert(count === 1, 'one of several timers of a quick instant is not quick')
  handleDue(line, 1)
}

/** Handles all instants up to `until`; the one at `line.now` has been handled. False: nothing follows, or nothing can move any more. */
export function runQuick(line: Line, flags: Uint8Array, until: number): boolean {
  const { queue, collector, due } = line
  const { times } = queue
  const { arrivalSlot, clearSlot, workSlot, changeSlot, zoneStation, stationZone, stationHeld, storeSlot, hasDuty, releaseSampler } = line
  const { zoneState, zoneChange, zoneClearing, clearAt, zoneHeld, zoneCarrier, zoneClaimant, pathHeld, pathLooks, pathBrake, pathCarrier } =
    line
  const { moveSeconds, clearSeconds, carrierPhase, carrierPath, carrierSince, carrierZone, carrierSerial, stationServed } = line
  const { lapZone, zoneSince, zoneSeconds, stationState, stationSince, stationSeconds, occupiedSince, occupiedSeconds } = collector
  const { zoneState: zoneIs, carrierState: carrierIs, carrierSince: waitsSince, carrierSeconds, movesOut, blockedSince } = collector
  const lastZone = line.zones - 1
  const held = mayHold(line)
  for (;;) {
    if (line.activity === 0 && standsStill(line)) return false
    if (queue.size === 0) return false
    const now = times[queue.first()]!
    if (now > until) return true
    line.now = now
    let count = 1
    due[0] = queue.pop()
    while (queue.size > 0 && times[queue.first()] === now) due[count++] = queue.pop()
    if (count > 1 && !areQuick(line, flags, count)) {
      handleDue(line, count)
      continue
    }
    for (let k = 0; k < count; k++) {
      const slot = due[k]!
      if (slot < arrivalSlot || slot >= storeSlot) {
        handOver(line, count)
        continue
      }

      // who wants to start, and from where
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
          handOver(line, count)
          continue
        }
        const carrier = zoneCarrier[from]!
        const isFree = nearExit ? canLeave(line, from) : zoneState[to] === FREE || (zoneClearing[to] === CLEAR_KNOWN && clearAt[to]! <= now)
        if (slot < clearSlot && pathLooks[path] === 1) {
          const brake = pathBrake[path]!
          if ((held && pathHeld[path] === 1) || (!isFree && brake === 0)) {
            handOver(line, count)
            continue
          }
          line.events++
          if (!isFree) {
            carrierPhase[carrier] = BRAKING
            pathLooks[path] = 0
            times[slot] = now + brake
            queue.schedule(slot)
            continue
          }
          atSpeed = 1
          line.activity--
          pathCarrier[path] = NONE
        } else {
          const station = zoneStation[from]!
          if (station !== NONE && (stationHeld[station]! > 0 || (hasDuty[3 * station + LOAD_DUTY] === 1 && !hasProduct(line)))) {
            handOver(line, count)
            continue
          }
          line.events++
          line.activity--
          if (slot >= changeSlot) endTurn(line, from)
          else if (slot >= workSlot) {
            if (carrierPhase[carrier] !== RELEASING) {
              endDuty(line, station, carrier)
              const duty = firstDuty(line, station, carrier, line.stationDuty[station]! + 1)
              if (duty !== NONE) {
                line.stationDuty[station] = duty
                startDuty(line, station, carrier)
                continue
              }
              if (releaseSampler[station] !== NONE) {
                startRelease(line, station, carrier)
                continue
              }
            }
          } else {
            pathCarrier[path] = NONE
            zoneClaimant[from] = NONE
            zoneState[from] = OCCUPIED
            const duty = station === NONE ? NONE : firstDuty(line, station, carrier, UNLOAD_DUTY)
            if (duty !== NONE) {
              stationServed[station] = 1
              line.stationDuty[station] = duty
              startDuty(line, station, carrier)
              zoneSeconds[from * ZONE_WIDTH + zoneIs[from]!]! += now - zoneSince[from]!
              zoneSince[from] = now
              zoneIs[from] = Z_WORKING
              carrierSeconds[carrier * CARRIER_WIDTH + carrierIs[carrier]!]! += now - waitsSince[carrier]!
              waitsSince[carrier] = now
              carrierIs[carrier] = C_WORKED
              stationSeconds[station * STATION_WIDTH + stationState[station]!]! += now - stationSince[station]!
              stationSince[station] = now
              stationState[station] = S_WORKING
              continue
            }
            if ((flag & TURNS) > 0 && line.zonePosition[from] !== line.pathFromPosition[from]) {
              turnOut(line, from, carrier)
              continue
            }
          }
          carrierPhase[carrier] = DONE
          carrierSince[carrier] = now
          if (!isFree) {
            if (nearExit) waitFor(line, from)
            else if (zoneClearing[to] === CLEAR_KNOWN) timeClear(line, to)
            zoneSeconds[from * ZONE_WIDTH + zoneIs[from]!]! += now - zoneSince[from]!
            zoneSince[from] = now
            zoneIs[from] = Z_BLOCKED
            carrierSeconds[carrier * CARRIER_WIDTH + carrierIs[carrier]!]! += now - waitsSince[carrier]!
            waitsSince[carrier] = now
            carrierIs[carrier] = carrierSerial[carrier] === NONE ? C_EMPTY : C_WITH_PRODUCT
            if (station === NONE) continue
            stationSeconds[station * STATION_WIDTH + stationState[station]!]! += now - stationSince[station]!
            stationSince[station] = now
            stationState[station] = S_BLOCKED
            blockedSince[station] = now
            continue
          }
        }
      } else {
        const zone = slot < workSlot ? slot - clearSlot : slot - changeSlot
        const flag = flags[zone]!
        from = (flag & AFTER_EXIT_CLEAR) > 0 ? waitsBehind(line, zone) : zone === 0 ? lastZone : zone - 1
        const nearExit = (flags[from]! & EXIT_CLEAR) > 0
        const isHeld = held && (zoneHeld[from]! + zoneHeld[zone]! > 0 || (nearExit && isHeldAhead(line, from)))
        if ((flag & (QUICK + TURNS)) === TURNS || (flags[from]! & QUICK) === 0 || isHeld) {
          handOver(line, count)
          continue
        }
        line.events++
        if (slot >= changeSlot) endTurn(line, zone)
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
        let leaves = waiting !== NONE && carrierPhase[waiting] === DONE
        if (leaves && nearExit && !canLeave(line, from)) {
          waitFor(line, from)
          leaves = false
        }
        if (!leaves) {
          zoneSeconds[zone * ZONE_WIDTH + zoneIs[zone]!]! += now - zoneSince[zone]!
          zoneSince[zone] = now
          zoneIs[zone] = Z_FREE
          const station = zoneStation[zone]!
          if (station === NONE || stationState[station] === S_BREAK || stationState[station] === S_STOPPED) continue
          stationSeconds[station * STATION_WIDTH + stationState[station]!]! += now - stationSince[station]!
          stationSince[station] = now
          stationState[station] = S_STARVED
          continue
        }
      }

      // the move starts
      line.activity++
      const path = from
      const to = from === lastZone ? 0 : from + 1
      const flag = flags[from]!
      const carrier = zoneCarrier[from]!
      if (zoneClearing[to] === CLEAR_KNOWN) {
        const at = clearAt[to]!
        zoneClearing[to] = CLEAR_NOW
        line.events++
        zoneSeconds[to * ZONE_WIDTH + zoneIs[to]!]! += at - zoneSince[to]!
        zoneSince[to] = at
        zoneIs[to] = Z_FREE
        const station = zoneStation[to]!
        if (station !== NONE && stationState[station] === S_EXCHANGING) {
          stationSeconds[station * STATION_WIDTH + S_EXCHANGING]! += at - stationSince[station]!
          stationSince[station] = at
          stationState[station] = S_STARVED
        }
      }
      occupiedSeconds[from]! += now - occupiedSince[from]!
      occupiedSince[to] = now
      movesOut[from]!++
      zoneSeconds[from * ZONE_WIDTH + zoneIs[from]!]! += now - zoneSince[from]!
      zoneSince[from] = now
      zoneIs[from] = Z_VACATING
      zoneSeconds[to * ZONE_WIDTH + zoneIs[to]!]! += now - zoneSince[to]!
      zoneSince[to] = now
      zoneIs[to] = Z_CLAIMED
      if (carrierIs[carrier] !== C_MOVING) {
        carrierSeconds[carrier * CARRIER_WIDTH + carrierIs[carrier]!]! += now - waitsSince[carrier]!
        waitsSince[carrier] = now
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
          stationSeconds[stationLeft * STATION_WIDTH + is]! += now - stationSince[stationLeft]!
          stationSince[stationLeft] = now
          if (is === S_BLOCKED) {
            const { longestBlock } = collector
            const seconds = now - blockedSince[stationLeft]!
            if (seconds > longestBlock[stationLeft]!) longestBlock[stationLeft] = seconds
          }
          stationState[stationLeft] = S_EXCHANGING
        }
      }
      if (from === lapZone) {
        const start = line.carrierLapStart[carrier]!
        if (!Number.isNaN(start)) {
          collector.lap[VALUE] = now - start
          addToTally(collector.lap)
          collector.carrierLaps[carrier]!++
        }
        line.carrierLapStart[carrier] = now
      }
      let stops = (flag & STOPS) > 0
      const stationAhead = zoneStation[to]!
      if (stationAhead !== NONE) {
        if (dutyAhead(line, carrier, to)) stops = true
        const is = stationState[stationAhead]!
        if (is !== S_EXCHANGING && is !== S_BREAK && is !== S_STOPPED) {
          stationSeconds[stationAhead * STATION_WIDTH + is]! += now - stationSince[stationAhead]!
          stationSince[stationAhead] = now
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
      const seconds = moveSeconds[4 * path + 2 * atSpeed]!
      if (stops) {
        pathLooks[path] = 0
        times[arrivalSlot + path] = now + seconds
      } else {
        const look = moveSeconds[4 * path + 2 * atSpeed + SPEED]!
        pathLooks[path] = 1
        pathBrake[path] = seconds - look
        times[arrivalSlot + path] = now + look
      }
      queue.schedule(arrivalSlot + path)
      if ((flag & EXIT_CLEAR) > 0 && isFirstClaim) claimBehind(line, to, carrier)
      const behind = zoneCarrier[from === 0 ? lastZone : from - 1]!
      const clear = now + clearSeconds[2 * path + atSpeed]!
      const isAwaited = (flag & AFTER_EXIT_CLEAR) > 0 ? isWaitedFor(line, from) : behind !== NONE && carrierPhase[behind] === DONE
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
}
