/**
 * The start of a move at a quick instant (quick.ts), as `startMove` of move.ts has it: moveStart.test.ts holds the two against each other. And all that is known to come of it: a
 * carrier that looks ahead of itself into a zone whose past is known, and where nobody else has a say, goes on or stops by rule, so that it goes on here, ahead of the clock; whoever
 * waits behind it follows. It is one function with its columns in locals, since most of the time would go into calls. (MODEL.md §3, §11)
 */
import { assert } from '@loopwright/kernel'
import { isWaitedFor, timeClear } from '../moves/clear.ts'
import { dutyAhead } from '../moves/dutyAhead.ts'
import { PACE_CLEAR, SPEED } from '../moves/motion.ts'
import { stopsAt } from '../moves/move.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { CLAIMED, CLEAR_KNOWN, CLEAR_NOW, CLEAR_TIMED, DONE, FREE, LOOK_FROM_REST, MOVING, VACATING } from '../state/moves.ts'
import { operateZone } from '../stops/operation.ts'
import { watchMove } from '../stops/safety.ts'
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
import { C_MOVING, S_BLOCKED, S_EXCHANGING, S_STARVED, Z_CLAIMED, Z_FREE, Z_VACATING } from '../telling/states.ts'
import { isWaitedForAtMerge } from './quickMerge.ts'
import { settleRest, stand } from './quickRest.ts'
import { claimBehind } from './quickTransfer.ts'
import {
  AFTER_EXIT_CLEAR,
  EXIT_CLEAR,
  MERGES,
  NEVER_HELD,
  PLAIN_CLEAR,
  type Quick,
  STOPS,
  STOPS_BY_CARRIER,
  WATCHED,
} from './quickZones.ts'

/** Whether somebody waits for the zone that is being left, or will before it is clear. */
export function isAwaited(line: Line, { before, restIsKnown }: Quick, zone: number, flag: number): boolean {
  const { moves } = line
  if ((flag & AFTER_EXIT_CLEAR) > 0) return isWaitedFor(line, zone)
  if ((flag & MERGES) > 0) return isWaitedForAtMerge(line, zone, restIsKnown)
  const behind = moves.zoneCarrier[before[zone]!]!
  return behind !== NONE && (moves.carrierPhase[behind] === DONE || restIsKnown[behind] === 1)
}

/** How far a start may be worked out ahead: to the end of the part of the run, and to the next break, which holds stations. */
function horizon({ stops }: Line, { asksStations, until }: Quick): number {
  const { breakTimes, breakNext } = stops
  return asksStations && breakNext < breakTimes.length ? Math.min(until, breakTimes[breakNext]!) : until
}

/** Whether a stop or a break holds the station of a path's end. */
function holdsAnEnd({ graph, work, stops }: Line, path: number): boolean {
  const left = work.zoneStation[graph.pathFrom[path]!]!
  const ahead = work.zoneStation[graph.pathTo[path]!]!
  return (left !== NONE && stops.stationHeld[left]! > 0) || (ahead !== NONE && stops.stationHeld[ahead]! > 0)
}

/** Starts in one call, at most: a lone carrier would go on to the end of the run. */
const STARTS = 1_000

/** Starts the move along the path now, and all that follows from it and from nothing else. */
export function startQuick(line: Line, quick: Quick, firstPath: number, startsAtSpeed: number): void {
  const { queue, collector, moves, graph, slots, work } = line
  const { zoneSeconds, stationSeconds, carrierSeconds } = collector
  const { times } = queue
  const { arrivalSlot, clearSlot } = slots
  const { paces, asksStations } = quick
  const until = horizon(line, quick)
  let from = graph.pathFrom[firstPath]!
  let path = firstPath
  let atSpeed = startsAtSpeed
  let at = line.now
  // the zone that the carrier left first: who waits quick.behind it may follow
  let left: number = NONE
  for (let starts = 0; ; starts++) {
    // what is told of the zones, the carrier and the stations, then what becomes of them
    line.activity++
    const to = graph.pathTo[path]!
    const pathFlag = quick.pathFlags[path]!
    const carrier = moves.zoneCarrier[from]!
    if (moves.zoneClearing[to] === CLEAR_KNOWN) {
      const clear = times[clearSlot + to]!
      moves.zoneClearing[to] = CLEAR_NOW
      line.events++
      zoneSeconds[to * ZONE_WIDTH + collector.zoneState[to]!]! += clear - zoneSeconds[to * ZONE_WIDTH + ZONE_SINCE]!
      zoneSeconds[to * ZONE_WIDTH + ZONE_SINCE] = clear
      collector.zoneState[to] = Z_FREE
      const station = work.zoneStation[to]!
      if (station !== NONE && collector.stationState[station] === S_EXCHANGING) {
        stationSeconds[station * STATION_WIDTH + S_EXCHANGING]! += clear - stationSeconds[station * STATION_WIDTH + STATION_SINCE]!
        stationSeconds[station * STATION_WIDTH + STATION_SINCE] = clear
        collector.stationState[station] = S_STARVED
      }
    }
    zoneSeconds[from * ZONE_WIDTH + OCCUPIED_SECONDS]! += at - zoneSeconds[from * ZONE_WIDTH + OCCUPIED_SINCE]!
    zoneSeconds[to * ZONE_WIDTH + OCCUPIED_SINCE] = at
    collector.movesOut[from]!++
    zoneSeconds[from * ZONE_WIDTH + collector.zoneState[from]!]! += at - zoneSeconds[from * ZONE_WIDTH + ZONE_SINCE]!
    zoneSeconds[from * ZONE_WIDTH + ZONE_SINCE] = at
    collector.zoneState[from] = Z_VACATING
    zoneSeconds[to * ZONE_WIDTH + collector.zoneState[to]!]! += at - zoneSeconds[to * ZONE_WIDTH + ZONE_SINCE]!
    zoneSeconds[to * ZONE_WIDTH + ZONE_SINCE] = at
    collector.zoneState[to] = Z_CLAIMED
    if (collector.carrierState[carrier] !== C_MOVING) {
      carrierSeconds[carrier * CARRIER_WIDTH + collector.carrierState[carrier]!]! +=
        at - carrierSeconds[carrier * CARRIER_WIDTH + CARRIER_SINCE]!
      carrierSeconds[carrier * CARRIER_WIDTH + CARRIER_SINCE] = at
      collector.carrierState[carrier] = C_MOVING
    }
    const stationLeft = work.zoneStation[from]!
    if (stationLeft !== NONE) {
      if (work.stationServed[stationLeft] === 1) {
        collector.cycles[stationLeft]!++
        work.stationServed[stationLeft] = 0
      }
      const is = collector.stationState[stationLeft]!
      if (is < S_EXCHANGING) {
        stationSeconds[stationLeft * STATION_WIDTH + is]! += at - stationSeconds[stationLeft * STATION_WIDTH + STATION_SINCE]!
        stationSeconds[stationLeft * STATION_WIDTH + STATION_SINCE] = at
        if (is === S_BLOCKED) {
          const seconds = at - stationSeconds[stationLeft * STATION_WIDTH + BLOCKED_SINCE]!
          if (seconds > stationSeconds[stationLeft * STATION_WIDTH + LONGEST_BLOCK]!)
            stationSeconds[stationLeft * STATION_WIDTH + LONGEST_BLOCK] = seconds
        }
        collector.stationState[stationLeft] = S_EXCHANGING
      }
    }
    if (from === collector.lapZone) {
      collector.onLap(carrier)
    }
    let stops = (pathFlag & STOPS) > 0
    const stationAhead = work.zoneStation[to]!
    if (stationAhead !== NONE) {
      if (dutyAhead(line, carrier, to)) stops = true
      const is = collector.stationState[stationAhead]!
      if (is === S_STARVED) {
        stationSeconds[stationAhead * STATION_WIDTH + is]! += at - stationSeconds[stationAhead * STATION_WIDTH + STATION_SINCE]!
        stationSeconds[stationAhead * STATION_WIDTH + STATION_SINCE] = at
        collector.stationState[stationAhead] = S_EXCHANGING
      }
    }
    if ((pathFlag & STOPS_BY_CARRIER) > 0 && !stops) stops = stopsAt(line, path, carrier, to)
    if (!graph.isLoop) {
      moves.zoneStarts[from]!++
      moves.zoneLastIn[to] = path
      moves.zoneWay[from] = NONE
      moves.leavingPath[from] = path
    }
    const isFirstClaim = moves.zoneState[to] !== CLAIMED
    assert(
      moves.zoneCarrier[to] === NONE && (isFirstClaim || moves.zoneClaimant[to] === carrier),
      'a move starts into a zone that is not free for its carrier',
    )
    moves.zoneState[from] = VACATING
    moves.zoneClaimant[from] = NONE
    moves.zoneCarrier[from] = NONE
    moves.zoneState[to] = CLAIMED
    moves.zoneClaimant[to] = carrier
    moves.zoneCarrier[to] = carrier
    moves.pathCarrier[path] = carrier
    moves.carrierZone[carrier] = to
    moves.carrierPath[carrier] = path
    moves.carrierPhase[carrier] = MOVING
    const pace = paces.pathPace[path]!
    times[clearSlot + from] = at + paces.paceSeconds[pace + PACE_CLEAR + atSpeed]!
    const isFirst = left === NONE
    if (isFirst) left = from
    if ((pathFlag & PLAIN_CLEAR) > 0 && (quick.behind[from] !== NONE || !isAwaited(line, quick, from, quick.flags[from]!))) {
      moves.zoneClearing[from] = CLEAR_KNOWN
    } else {
      moves.zoneClearing[from] = CLEAR_TIMED
      line.activity++
      queue.schedule(clearSlot + from)
    }
    if (stops) {
      moves.pathLooks[path] = 0
      times[arrivalSlot + path] = at + paces.paceSeconds[pace + 2 * atSpeed]!
      queue.schedule(arrivalSlot + path)
    } else {
      moves.pathLooks[path] = LOOK_FROM_REST + atSpeed
      const look = at + paces.paceSeconds[pace + 2 * atSpeed + SPEED]!
      const next = quick.onward[path]!
      let waits = false
      if (next !== NONE && look <= until && starts < STARTS && !(asksStations && holdsAnEnd(line, next))) {
        const ahead = graph.pathTo[next]!
        if (moves.zoneState[ahead] === FREE || (moves.zoneClearing[ahead] === CLEAR_KNOWN && times[clearSlot + ahead]! <= look)) {
          line.events++
          line.activity--
          moves.pathCarrier[path] = NONE
          from = to
          path = next
          at = look
          atSpeed = 1
          continue
        }
        const rest = at + paces.paceSeconds[pace + 2 * atSpeed]!
        quick.restAt[carrier] = rest
        if (moves.zoneClearing[ahead] === CLEAR_KNOWN) {
          const go = Math.max(times[clearSlot + ahead]!, rest)
          if (go <= until) {
            line.events += 2
            line.activity--
            moves.pathCarrier[path] = NONE
            moves.pathLooks[path] = 0
            stand(line, quick, carrier)
            from = to
            path = next
            at = go
            atSpeed = 0
            continue
          }
        } else if (moves.zoneState[ahead] !== VACATING) {
          quick.lookAt[carrier] = look
          quick.restIsKnown[carrier] = 1
          quick.known++
          waits = true
        }
      }
      if (!waits) {
        times[arrivalSlot + path] = look
        queue.schedule(arrivalSlot + path)
      }
    }
    if ((pathFlag & WATCHED) > 0) {
      line.draws.drawn[0] = times[arrivalSlot + path]! - at
      watchMove(line, path, carrier)
    }
    if (line.followsZones) {
      operateZone(line, to, arrivalSlot + path)
      operateZone(line, from, clearSlot + from)
    }
    if (isFirst && (quick.flags[from]! & EXIT_CLEAR) > 0 && isFirstClaim) claimBehind(line, to, carrier)

    // whoever waits quick.behind the zone that the carrier left first follows as soon as that is clear
    const follows = quick.behind[left]!
    if (follows === NONE || moves.zoneClearing[left] !== CLEAR_KNOWN) return
    from = graph.pathFrom[follows]!
    const follower = moves.zoneCarrier[from]!
    if (follower === NONE) return
    at = times[clearSlot + left]!
    atSpeed = 0
    const isOver = starts >= STARTS || (asksStations && holdsAnEnd(line, follows))
    if (quick.restIsKnown[follower] === 1) {
      const came = moves.carrierPath[follower]!
      if (quick.lookAt[follower]! >= at && !isOver) {
        at = quick.lookAt[follower]!
        atSpeed = 1
        line.events++
      } else {
        at = Math.max(at, quick.restAt[follower]!)
        if (at > until || isOver || (quick.pathFlags[came]! & NEVER_HELD) === 0) {
          settleRest(line, quick, follower)
          if (moves.carrierPhase[follower] === DONE) timeClear(line, left)
          return
        }
        if (moves.pathLooks[came]! > 0) line.events++
        line.events++
        moves.pathLooks[came] = 0
        stand(line, quick, follower)
      }
      quick.restIsKnown[follower] = 0
      quick.known--
      line.activity--
      moves.pathCarrier[came] = NONE
    } else if (moves.carrierPhase[follower] !== DONE) return
    else if (at > until || isOver) {
      timeClear(line, left)
      return
    }
    path = follows
    left = NONE
  }
}
