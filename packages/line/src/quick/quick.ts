/**
 * The common instants of a closed loop, without a list of what may start and without a judge: one timer ends, or several moves at once, and no stop has a say in what
 * follows. Since a zone of a loop is claimed by one carrier only, that is found in a few steps. State and columns are those of instant.ts, which handles every
 * other instant, every trace and every check; what is told is the same to the last bit. It has over 300 lines because it is one function with its columns in locals: at these
 * instants most of the time would go into calls. (MODEL.md §1, §3, §5, §11)
 */

import { C_MOVING, S_BLOCKED, S_EXCHANGING, S_STARVED, Z_CLAIMED, Z_FREE, Z_VACATING } from '../telling/states.ts'
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
import { inOne, type Pieces, Progress } from '../instant/pieces.ts'
import { PACE_CLEAR, SPEED } from '../moves/motion.ts'
import { pathThatStarts, stopsAt, stopsAtLook } from '../moves/move.ts'
import { makeRest, settleRests, stand, timeRest } from './quickRest.ts'
import { goesOnCalled, onCall, startsStayCalled } from './quickCalls.ts'
import { goesOn, startsStay } from './quickStay.ts'
import { operateIn, operateOut } from '../stops/operation.ts'
import { watchMove } from '../stops/safety.ts'
import { canLeave, claimBehind, isHeldAhead, turnOut, waitsBehind } from './quickTransfer.ts'
import {
  AFTER_EXIT_CLEAR,
  CLEARS_ELSEWHERE,
  DIVERTS,
  EXIT_CLEAR,
  MEETS,
  MERGES,
  PLAIN_CLEAR,
  QUICK,
  type Quick,
  STOPS,
  STOPS_BY_CARRIER,
  TRANSFER,
  TURNS,
  WATCHED,
} from './quickZones.ts'
import { settleFree } from './settle.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import {
  BRAKING,
  CLAIMED,
  CLEAR_KNOWN,
  CLEAR_NOW,
  CLEAR_TIMED,
  DONE,
  FREE,
  LOOKING,
  LOOK_FROM_REST,
  MOVING,
  OCCUPIED,
  VACATING,
} from '../state/moves.ts'
import { BACK, TO_WAY_OUT } from '../state/transfers.ts'
import { LOAD_DUTY } from '../state/work.ts'
import { hasProduct } from '../goods/supply.ts'
import { endChange, startChange } from '../moves/transfer.ts'

/** Whether the slots that fall due together are moves, and clears, that no stay, stop, transfer or meeting has a say in; if so the clears are made: they go before all that starts. */
function areQuick(line: Line, { flags, before }: Quick, count: number): boolean {
  const { moves } = line
  const { due, arrivalSlot, clearSlot, workSlot } = line.slots
  const { zoneHeld } = line.stops
  const { zoneNext, pathTo } = line.graph
  if (line.followsZones || line.hasSafety) return false
  for (let k = 0; k < count; k++) {
    const slot = due[k]!
    if (slot < arrivalSlot || slot >= workSlot) return false
    const from = slot < clearSlot ? pathTo[slot - arrivalSlot]! : before[slot - clearSlot]!
    if (from === NONE || (flags[from]! & (QUICK + TRANSFER + MEETS)) !== QUICK) return false
    const to = zoneNext[from]!
    if (zoneHeld[from]! + zoneHeld[to]! > 0) return false
    if (slot >= clearSlot) {
      if ((flags[to]! & TRANSFER) > 0) return false
      continue
    }
    const path = slot - arrivalSlot
    if (moves.pathLooks[path] === 0 ? line.work.zoneStation[from] !== NONE : line.stops.pathHeld[path] === 1 || stopsAtLook(line, path))
      return false
  }
  for (let k = 0; k < count; k++) {
    const slot = due[k]!
    if (slot < clearSlot) continue
    moves.zoneClearing[slot - clearSlot] = CLEAR_NOW
    moves.zoneState[slot - clearSlot] = FREE
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

/** Calls of `runSome` in one piece, of some milliseconds in all; and pieces that never have one instant. */
const CALLS = 50
const ENDLESS_PIECES = 10

/** Handles all instants up to `until`; the one at `line.now` has been handled. False: nothing follows, or nothing can move any more. */
export function* quickPieces(line: Line, quick: Quick, until: number): Pieces<boolean> {
  const progress = new Progress()
  for (;;) {
    let goesOn = AGAIN
    for (let call = 0; call < CALLS && goesOn === AGAIN; call++) goesOn = runSome(line, quick, until)
    if (goesOn !== AGAIN) return goesOn === UP_TO
    progress.ask(line, ENDLESS_PIECES)
    yield
  }
}

/** The same in one. */
export const runQuick = (line: Line, quick: Quick, until: number): boolean => inOne(quickPieces(line, quick, until))

/** Whether somebody waits for the zone that is being left, or will before it is clear. */
function isAwaited(line: Line, { before, restIsKnown }: Quick, zone: number, flag: number): boolean {
  const { moves } = line
  if ((flag & AFTER_EXIT_CLEAR) > 0) return isWaitedFor(line, zone)
  if ((flag & MERGES) > 0) return isWaitedForAtMerge(line, zone, restIsKnown)
  const behind = moves.zoneCarrier[before[zone]!]!
  return behind !== NONE && (moves.carrierPhase[behind] === DONE || restIsKnown[behind] === 1)
}

function isWaitedForAtMerge(
  { graph: { feeders }, moves: { zoneCarrier, carrierPhase } }: Line,
  zone: number,
  restIsKnown: Uint8Array,
): boolean {
  for (let k = feeders.first[zone]!; k < feeders.first[zone + 1]!; k++) {
    const behind = zoneCarrier[feeders.items[k]!]!
    if (behind !== NONE && (carrierPhase[behind] === DONE || restIsKnown[behind] === 1)) return true
  }
  return false
}

const SEVERAL = -2

/** The one place whose carrier stands before the merging zone that turns free now; NONE, or SEVERAL: then the merge decides. */
function waitsToMerge(line: Line, quick: Quick, zone: number): number {
  const { now } = line
  const { feeders } = line.graph
  const { zoneCarrier, carrierPhase } = line.moves
  let found = NONE
  for (let k = feeders.first[zone]!; k < feeders.first[zone + 1]!; k++) {
    const place = feeders.items[k]!
    const carrier = zoneCarrier[place]!
    if (carrier === NONE) continue
    if (quick.restIsKnown[carrier] === 1) {
      if (quick.restAt[carrier]! > now) {
        timeRest(line, quick, carrier)
        continue
      }
    } else if (carrierPhase[carrier] !== DONE) continue
    if (found !== NONE) return SEVERAL
    found = place
  }
  return found
}

/** Instants handled in one call: a call that takes long goes on in code that was exchanged in its middle, which is slower. */
const SOME = 2_000
const OVER = 0
const UP_TO = 1
const AGAIN = 2

function runSome(line: Line, quick: Quick, until: number): number {
  const { queue, collector, moves, transfers } = line
  const { due } = line.slots
  const { times } = queue
  const { arrivalSlot, clearSlot, workSlot, changeSlot, storeSlot, operatorSlot } = line.slots
  const { zoneStation, stationZone, hasDuty } = line.work
  const { stationHeld } = line.stops
  const { zoneState, zoneClearing, clearAt, zoneCarrier, zoneClaimant, pathLooks, pathCarrier } = moves
  const { zoneChange } = transfers
  const { zoneHeld, pathHeld } = line.stops
  const { hasCalls, followsZones } = line
  const { carrierPhase, carrierPath, carrierZone } = moves
  const { stationServed } = line.work
  const { onlyOut, zoneNext, pathTo, isLoop } = line.graph
  const { lapZone, zoneSeconds, stationState, stationSeconds } = collector
  const { zoneState: zoneIs, carrierState: carrierIs, carrierSeconds, movesOut } = collector
  const { flags, pathFlags, before, mayHold: held, restAt, restIsKnown } = quick
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
    if (count > 1 && !areQuick(line, quick, count)) {
      settleRests(line, quick)
      handleDue(line, count)
      continue
    }
    for (let k = 0; k < count; k++) {
      const slot = due[k]!
      if (slot < arrivalSlot || slot >= storeSlot) {
        if (slot < operatorSlot) handOver(line, quick, count)
        else onCall(line, quick, slot)
        continue
      }

      // what ends, and who may start because of it: the carrier in `from`, along `path`
      let from = 0
      let path = NONE
      let atSpeed = 0
      if (slot < clearSlot || (slot >= workSlot && (slot < changeSlot || zoneChange[slot - changeSlot] === TO_WAY_OUT))) {
        const came = slot - arrivalSlot
        from = slot < clearSlot ? pathTo[came]! : slot < changeSlot ? stationZone[slot - workSlot]! : slot - changeSlot
        const flag = flags[from]!
        if ((flag & QUICK) === 0) {
          handOver(line, quick, count)
          continue
        }
        path = onlyOut[from]!
        const diverts = (flag & DIVERTS) > 0
        const nearExit = (flag & EXIT_CLEAR) > 0
        if (held && (zoneHeld[from]! > 0 || (diverts || nearExit ? isHeldAhead(line, from) : zoneHeld[zoneNext[from]!]! > 0))) {
          handOver(line, quick, count)
          continue
        }
        const carrier = zoneCarrier[from]!
        if (slot < clearSlot && pathLooks[came]! > 0) {
          // a look at the end of a move: on at speed, or to rest
          const pace = pathPace[came]! + 2 * (pathLooks[came]! - LOOK_FROM_REST)
          const brake = paceSeconds[pace]! - paceSeconds[pace + SPEED]!
          if (held && pathHeld[came] === 1) {
            handOver(line, quick, count)
            continue
          }
          let isFree = true
          if (diverts) {
            carrierPhase[carrier] = LOOKING
            path = pathThatStarts(line, from, false)
            isFree = path !== NONE
          } else if (nearExit) isFree = canLeave(line, from)
          else {
            const to = zoneNext[from]!
            isFree = zoneState[to] === FREE || (zoneClearing[to] === CLEAR_KNOWN && clearAt[to]! <= now)
          }
          if (!isFree && brake === 0) {
            handOver(line, quick, count)
            continue
          }
          line.events++
          if (!isFree) {
            carrierPhase[carrier] = BRAKING
            pathLooks[came] = 0
            const rest = now + brake
            const station = zoneStation[from]!
            const to = zoneNext[from]!
            const isOff = station !== NONE && stationHeld[station]! > 0
            // at rest before the zone ahead is clear, it changes nothing for others
            const clears =
              diverts || zoneState[to] !== VACATING
                ? Number.POSITIVE_INFINITY
                : zoneClearing[to] === CLEAR_KNOWN
                  ? clearAt[to]!
                  : times[clearSlot + to]!
            if (diverts || followsZones || isOff || clears < rest || ((flag | flags[to]!) & TRANSFER) > 0) {
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
          pathCarrier[came] = NONE
          if (followsZones) operateIn(line, came, 0)
        } else {
          // at rest, or a duty, the release or a turn to the way out has ended
          const station = zoneStation[from]!
          if (
            station !== NONE &&
            (stationHeld[station]! > 0 || (!hasCalls && hasDuty[3 * station + LOAD_DUTY] === 1 && !hasProduct(line)))
          ) {
            handOver(line, quick, count)
            continue
          }
          line.events++
          line.activity--
          if (slot >= changeSlot) endChange(line, from)
          else if (slot >= workSlot) {
            if (hasCalls ? goesOnCalled(line, quick, station, carrier) : goesOn(line, station, carrier)) continue
          } else {
            assert(
              zoneState[from] === CLAIMED && zoneClaimant[from] === carrier,
              'a carrier comes to rest in a zone that was not claimed for it',
            )
            pathCarrier[came] = NONE
            zoneClaimant[from] = NONE
            zoneState[from] = OCCUPIED
            if (followsZones) operateIn(line, came, 0)
            if (station !== NONE && (hasCalls ? startsStayCalled(line, quick, station, carrier) : startsStay(line, station, carrier)))
              continue
            if ((flag & TURNS) > 0 && transfers.zonePosition[from] !== transfers.pathFromPosition[path]) {
              turnOut(line, from, carrier)
              continue
            }
          }
          let isFree = true
          if (diverts) {
            carrierPhase[carrier] = DONE
            path = pathThatStarts(line, from, false)
            isFree = path !== NONE
          } else if (nearExit) {
            isFree = canLeave(line, from)
            if (!isFree) waitFor(line, path)
          } else {
            const to = zoneNext[from]!
            isFree = zoneState[to] === FREE || (zoneClearing[to] === CLEAR_KNOWN && clearAt[to]! <= now)
            if (!isFree && zoneClearing[to] === CLEAR_KNOWN) timeClear(line, to)
          }
          if (!isFree) {
            restAt[carrier] = now
            stand(line, quick, carrier)
            continue
          }
        }
      } else {
        // a zone is clear, or its transfer has turned back; of several slots the clears have been made
        const zone = slot < workSlot ? slot - clearSlot : slot - changeSlot
        const flag = flags[zone]!
        from =
          (flag & AFTER_EXIT_CLEAR) > 0 ? waitsBehind(line, zone) : (flag & MERGES) > 0 ? waitsToMerge(line, quick, zone) : before[zone]!
        let waiting: number = NONE
        let nearExit = false
        let leaves = false
        if (from === SEVERAL || (flag & CLEARS_ELSEWHERE) > 0 || (held && zoneHeld[zone]! > 0)) {
          handOver(line, quick, count)
          continue
        }
        if (from !== NONE) {
          waiting = zoneCarrier[from]!
          if (waiting !== NONE) {
            const isKnown = restIsKnown[waiting] === 1
            leaves = isKnown ? restAt[waiting]! <= now : carrierPhase[waiting] === DONE
            nearExit = (flags[from]! & EXIT_CLEAR) > 0
            if (leaves && ((flags[from]! & QUICK) === 0 || (held && isHeldAhead(line, from)))) {
              handOver(line, quick, count)
              continue
            }
            if (isKnown) {
              if (leaves) makeRest(line, quick, waiting)
              else timeRest(line, quick, waiting)
            }
          }
        }
        line.events++
        if (slot >= changeSlot) endChange(line, zone)
        if (count === 1) {
          zoneClearing[zone] = CLEAR_NOW
          line.activity--
          if (slot < workSlot) {
            if (followsZones) operateOut(line, moves.leavingPath[zone]!, 0)
            if ((flag & TURNS) > 0 && transfers.backPosition[zone] !== transfers.zonePosition[zone]) {
              transfers.zoneChange[zone] = BACK
              startChange(line, zone, NONE, 1)
              continue
            }
          }
          assert(zoneState[zone] === VACATING, 'a zone turns free that nobody has left')
          zoneState[zone] = FREE
        } else if (zoneState[zone] !== FREE) continue
        if (leaves) {
          path = onlyOut[from]!
          if (path === NONE) {
            path = pathThatStarts(line, from, false)
            leaves = path !== NONE
          } else if (nearExit && !canLeave(line, from)) {
            waitFor(line, path)
            leaves = false
          }
        }
        if (!leaves) {
          settleFree(line, zone)
          continue
        }
      }

      // the move starts, as startMove has it (moveStart.test.ts holds the two against each other): what is told of the zones, the carrier and the stations, then what becomes of them
      line.activity++
      const to = pathTo[path]!
      const pathFlag = pathFlags[path]!
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
        if (is < S_EXCHANGING) {
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
      let stops = (pathFlag & STOPS) > 0
      const stationAhead = zoneStation[to]!
      if (stationAhead !== NONE) {
        if (dutyAhead(line, carrier, to)) stops = true
        const is = stationState[stationAhead]!
        if (is === S_STARVED) {
          stationSeconds[stationAhead * STATION_WIDTH + is]! += now - stationSeconds[stationAhead * STATION_WIDTH + STATION_SINCE]!
          stationSeconds[stationAhead * STATION_WIDTH + STATION_SINCE] = now
          stationState[stationAhead] = S_EXCHANGING
        }
      }
      if ((pathFlag & STOPS_BY_CARRIER) > 0 && !stops) stops = stopsAt(line, path, carrier, to)
      if (!isLoop) {
        moves.zoneStarts[from]!++
        moves.zoneLastIn[to] = path
        moves.zoneWay[from] = NONE
        moves.leavingPath[from] = path
      }
      const isFirstClaim = zoneState[to] !== CLAIMED
      assert(
        zoneCarrier[to] === NONE && (isFirstClaim || zoneClaimant[to] === carrier),
        'a move starts into a zone that is not free for its carrier',
      )
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
        pathLooks[path] = LOOK_FROM_REST + atSpeed
        times[arrivalSlot + path] = now + paceSeconds[pace + 2 * atSpeed + SPEED]!
      }
      queue.schedule(arrivalSlot + path)
      if ((pathFlag & WATCHED) > 0) {
        line.draws.drawn[0] = times[arrivalSlot + path]! - now
        watchMove(line, path, carrier)
      }
      if (followsZones) {
        operateIn(line, path, 1)
        operateOut(line, path, 1)
      }
      const fromFlag = flags[from]!
      if ((fromFlag & EXIT_CLEAR) > 0 && isFirstClaim) claimBehind(line, to, carrier)
      const clear = now + paceSeconds[pace + PACE_CLEAR + atSpeed]!
      if ((pathFlag & PLAIN_CLEAR) > 0 && !isAwaited(line, quick, from, fromFlag)) {
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
