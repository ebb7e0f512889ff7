/**
 * The common instants of a closed loop without a list, a call and a judge: one timer ends, and it is a move, or a clear that somebody waits for, where no
 * transfer and no stop has a say. Same state and same columns as instant.ts, which handles every other instant; what is told is the same to the last bit.
 * One function, with its columns in locals: at these instants most of the time would go into calls.
 */
import { CARRIER_WIDTH, STATION_WIDTH, ZONE_WIDTH } from './collect.ts'
import { timeClear } from './clear.ts'
import { dutyAhead } from './dutyAhead.ts'
import { standsStill } from './gridlock.ts'
import { handleFrom } from './instant.ts'
import { SPEED } from './motion.ts'
import { CARRIER_STATES, STATION_STATES, ZONE_STATES } from './result.ts'
import {
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
  STOPS_ALWAYS,
  STOPS_PERHAPS,
  UNLOAD_DUTY,
  VACATING,
} from './state.ts'
import { endDuty, firstDuty, startDuty, startRelease } from './station.ts'
import { hasProduct } from './supply.ts'
import { addToTally, VALUE } from './tally.ts'

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

/** Whether the line has any such instants. */
export function hasQuickInstants(line: Line): boolean {
  return line.isLoop && !line.hasCalls && !line.hasRejects && !line.followsZones && line.operators === 0
}

/** 1 for paths whose moves may be handled here: derived times above 0 s, and no transfer, safety stop or exit-clear rule has a say in them. */
export function quickPaths(line: Line): Uint8Array {
  const { zoneChanges, exitClear, moveSampler, clearSampler, moveSeconds, clearSeconds, pathStops, zonePrevious, safety } = line
  return Uint8Array.from({ length: line.paths }, (_, path) => {
    const from = line.pathFrom[path]!
    const to = line.pathTo[path]!
    if (zoneChanges[from] === 1 || exitClear[from] === 1 || exitClear[to] === 1 || exitClear[zonePrevious[from]!] === 1) return 0
    if (moveSampler[path] !== NONE || clearSampler[path] !== NONE || pathStops[path] === STOPS_PERHAPS) return 0
    if (safety.pathSafety[path] !== NONE) return 0
    const times = [...moveSeconds.subarray(4 * path, 4 * path + 4), ...clearSeconds.subarray(2 * path, 2 * path + 2)]
    return times.every((seconds) => seconds > 0) ? 1 : 0
  })
}

/** Handles all instants up to `until`; the one at `line.now` has been handled. False: nothing follows, or nothing can move any more. */
export function runQuick(line: Line, isQuick: Uint8Array, until: number): boolean {
  const { queue, collector } = line
  const { times } = queue
  const { arrivalSlot, clearSlot, workSlot, changeSlot, zoneStation, stationZone, stationHeld, hasDuty, releaseSampler, zoneNext, zonePrevious, zoneState, zoneClearing, clearAt, clearIsPlain } = line
  const { zoneHeld, zoneCarrier, zoneClaimant, zoneChanges, pathStops, pathHeld, pathLooks, pathBrake, pathCarrier } = line
  const { moveSeconds, clearSeconds, carrierPhase, carrierPath, carrierSince, carrierZone, carrierSerial, stationServed } = line
  const { lapZone, zoneSince, zoneSeconds, stationState, stationSince, stationSeconds, occupiedSince, occupiedSeconds } = collector
  const zoneIs = collector.zoneState
  const carrierIs = collector.carrierState
  const waitsSince = collector.carrierSince
  const { carrierSeconds, movesOut, blockedSince } = collector
  let next = queue.first()
  for (;;) {
    if (line.activity === 0 && standsStill(line)) return false
    if (queue.size === 0) return false
    next = queue.first()
    const now = times[next]!
    if (now > until) return true
    line.now = now
    const slot = queue.pop()
    if ((queue.size > 0 && times[queue.first()] === now) || slot < arrivalSlot || slot >= changeSlot) {
      handleFrom(line, slot)
      continue
    }

    // who wants to start, and from where
    let from = 0
    let atSpeed = 0
    if (slot < clearSlot || slot >= workSlot) {
      const path = slot - arrivalSlot
      const station = slot < clearSlot ? zoneStation[zoneNext[path]!]! : slot - workSlot
      from = slot < clearSlot ? zoneNext[path]! : stationZone[station]!
      const to = zoneNext[from]!
      const isOff = station !== NONE && (stationHeld[station]! > 0 || (hasDuty[3 * station + LOAD_DUTY] === 1 && !hasProduct(line)))
      if (isQuick[from] === 0 || isOff || zoneHeld[from]! + zoneHeld[to]! > 0) {
        handleFrom(line, slot)
        continue
      }
      const carrier = zoneCarrier[from]!
      const isFree = zoneState[to] === FREE || (zoneClearing[to] === CLEAR_KNOWN && clearAt[to]! <= now)
      let duty = NONE
      if (slot >= workSlot) {
        line.events++
        line.activity--
        if (carrierPhase[carrier] !== RELEASING) {
          endDuty(line, station, carrier)
          duty = firstDuty(line, station, carrier, line.stationDuty[station]! + 1)
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
      } else if (pathLooks[path] === 1) {
        const brake = pathBrake[path]!
        if (pathHeld[path] === 1 || (!isFree && brake === 0)) {
          handleFrom(line, slot)
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
        if (station !== NONE) duty = firstDuty(line, station, carrier, UNLOAD_DUTY)
        line.events++
        line.activity--
        pathCarrier[path] = NONE
        zoneClaimant[from] = NONE
        zoneState[from] = OCCUPIED
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
      }
      if (atSpeed === 0) {
        carrierPhase[carrier] = DONE
        carrierSince[carrier] = now
        if (!isFree) {
          timeClear(line, to)
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
      const zone = slot - clearSlot
      from = zonePrevious[zone]!
      if (zoneChanges[zone] === 1 || isQuick[from] === 0 || zoneHeld[from]! + zoneHeld[zone]! > 0) {
        handleFrom(line, slot)
        continue
      }
      line.events++
      line.activity--
      zoneClearing[zone] = CLEAR_NOW
      zoneState[zone] = FREE
      const waiting = zoneCarrier[from]!
      if (waiting === NONE || carrierPhase[waiting] !== DONE) {
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
    const to = zoneNext[from]!
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
    let stops = pathStops[path] === STOPS_ALWAYS
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
    const behind = zoneCarrier[zonePrevious[from]!]!
    const clear = now + clearSeconds[2 * path + atSpeed]!
    if (clearIsPlain[path] === 1 && (behind === NONE || carrierPhase[behind] !== DONE)) {
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
