/**
 * The common instants of a closed loop without a list, a call and a judge: one timer ends, and it is a move, or a clear that somebody waits for, where no
 * transfer and no stop has a say. Same state and same columns as instant.ts, which handles every other instant; what is told is the same to the last bit.
 * One function, with its columns in locals: at these instants most of the time would go into calls.
 */

import { timeClear } from './clear.ts'
import { CARRIER_WIDTH, STATION_WIDTH, ZONE_WIDTH } from './collect.ts'
import { dutyAhead } from './dutyAhead.ts'
import { standsStill } from './gridlock.ts'
import { handleDue } from './instant.ts'
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

/** What is known of a zone and the path out of it before a run, in one number each: a place less to look. */
const QUICK = 1
const CLEARS = 2
const STOPS = 4
const PLAIN_CLEAR = 8

/**
 * By zone: QUICK if moves out of it may be handled here, with derived times above 0 s and no transfer, safety stop or exit-clear rule that has a say in them; CLEARS
 * if no transfer turns when it is clear; STOPS if the path out always ends in a stop; PLAIN_CLEAR if its clear needs a timer only where somebody waits.
 */
export function quickZones(line: Line): Uint8Array {
  const { zoneChanges, exitClear, moveSampler, clearSampler, moveSeconds, clearSeconds, pathStops, zonePrevious, zoneNext, safety } = line
  return Uint8Array.from({ length: line.zones }, (_, zone) => {
    const next = zoneNext[zone]!
    const times = [...moveSeconds.subarray(4 * zone, 4 * zone + 4), ...clearSeconds.subarray(2 * zone, 2 * zone + 2)]
    const isPlain = zoneChanges[zone]! + exitClear[zone]! + exitClear[next]! + exitClear[zonePrevious[zone]!]! === 0
    const isDerived = moveSampler[zone] === NONE && clearSampler[zone] === NONE && times.every((seconds) => seconds > 0)
    const isQuick = isPlain && isDerived && pathStops[zone] !== STOPS_PERHAPS && safety.pathSafety[zone] === NONE
    return (
      QUICK * Number(isQuick) +
      CLEARS * Number(zoneChanges[zone] === 0) +
      STOPS * Number(pathStops[zone] === STOPS_ALWAYS) +
      PLAIN_CLEAR * line.clearIsPlain[zone]!
    )
  })
}

/** Whether a stop can ever hold a zone. */
function mayHold({ spec, safety }: Line): boolean {
  const stopsZones = spec.breakdowns.some(({ part }) => part.kind !== 'station') || safety.safetyStations.length > 0
  return stopsZones || (spec.breaks.length > 0 && !spec.conveyorDuringBreaks)
}

/** Whether the slots that fall due together are moves, and clears, that no stay, stop or transfer has a say in; if so the clears are made: they go before all that starts. */
function areQuick(line: Line, flags: Uint8Array, count: number): boolean {
  const { due, arrivalSlot, clearSlot, workSlot, zoneHeld, zoneNext, zonePrevious } = line
  for (let k = 0; k < count; k++) {
    const slot = due[k]!
    if (slot < arrivalSlot || slot >= workSlot) return false
    const from = slot < clearSlot ? zoneNext[slot - arrivalSlot]! : zonePrevious[slot - clearSlot]!
    const to = zoneNext[from]!
    if ((flags[from]! & QUICK) === 0 || zoneHeld[from]! + zoneHeld[to]! > 0) return false
    if (slot >= clearSlot) {
      if ((flags[to]! & CLEARS) === 0) return false
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

/** Handles all instants up to `until`; the one at `line.now` has been handled. False: nothing follows, or nothing can move any more. */
export function runQuick(line: Line, flags: Uint8Array, until: number): boolean {
  const { queue, collector, due } = line
  const { times } = queue
  const { arrivalSlot, clearSlot, workSlot, changeSlot, zoneStation, stationZone, stationHeld, hasDuty, releaseSampler } = line
  const { zoneState, zoneClearing, clearAt, zoneHeld, zoneCarrier, zoneClaimant, pathHeld, pathLooks, pathBrake, pathCarrier } = line
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
      if (slot < arrivalSlot || slot >= changeSlot) {
        handleDue(line, 1)
        continue
      }

      // who wants to start, and from where
      let from = 0
      let atSpeed = 0
      if (slot < clearSlot || slot >= workSlot) {
        const path = slot - arrivalSlot
        from = slot >= workSlot ? stationZone[slot - workSlot]! : path === lastZone ? 0 : path + 1
        const to = from === lastZone ? 0 : from + 1
        if ((flags[from]! & QUICK) === 0 || (held && zoneHeld[from]! + zoneHeld[to]! > 0)) {
          handleDue(line, 1)
          continue
        }
        const carrier = zoneCarrier[from]!
        const isFree = zoneState[to] === FREE || (zoneClearing[to] === CLEAR_KNOWN && clearAt[to]! <= now)
        if (slot < clearSlot && pathLooks[path] === 1) {
          const brake = pathBrake[path]!
          if ((held && pathHeld[path] === 1) || (!isFree && brake === 0)) {
            handleDue(line, 1)
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
          const station = slot >= workSlot ? slot - workSlot : zoneStation[from]!
          if (station !== NONE && (stationHeld[station]! > 0 || (hasDuty[3 * station + LOAD_DUTY] === 1 && !hasProduct(line)))) {
            handleDue(line, 1)
            continue
          }
          line.events++
          line.activity--
          if (slot >= workSlot) {
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
          }
          carrierPhase[carrier] = DONE
          carrierSince[carrier] = now
          if (!isFree) {
            if (zoneClearing[to] === CLEAR_KNOWN) timeClear(line, to)
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
        from = zone === 0 ? lastZone : zone - 1
        if ((flags[zone]! & CLEARS) === 0 || (flags[from]! & QUICK) === 0 || (held && zoneHeld[from]! + zoneHeld[zone]! > 0)) {
          handleDue(line, 1)
          continue
        }
        line.events++
        if (count === 1) {
          zoneClearing[zone] = CLEAR_NOW
          zoneState[zone] = FREE
          line.activity--
        } else if (zoneState[zone] !== FREE) continue
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
      const behind = zoneCarrier[from === 0 ? lastZone : from - 1]!
      const clear = now + clearSeconds[2 * path + atSpeed]!
      if ((flag & PLAIN_CLEAR) > 0 && (behind === NONE || carrierPhase[behind] !== DONE)) {
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
