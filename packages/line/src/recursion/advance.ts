/**
 * Takes every carrier as far as the one ahead has been taken, round and round. This is the inner loop of the recursion, in one function, with its numbers in locals
 * and columns. A zone's time is added up where something ends, as a difference of two instants: since every sum of times on the clock grid is exact, in whatever
 * order it is taken, what is left over is the rest (run.ts).
 */
import {
  C_EMPTY,
  C_WITH_PRODUCT,
  C_WORKED,
  S_BLOCKED,
  S_EXCHANGING,
  S_STARVED,
  Z_BLOCKED,
  Z_VACATING,
  Z_WORKING,
} from '../telling/states.ts'
import { CARRIER_WIDTH, LONGEST_BLOCK, OCCUPIED_SECONDS, STATION_WIDTH, ZONE_WIDTH } from '../telling/collect.ts'
import { drawInOrder, placeForProduct } from '../work/draw.ts'
import { dutyApplies } from '../moves/dutyAhead.ts'
import { PACE_CLEAR, SPEED } from '../moves/motion.ts'
import { NONE } from '../state/lists.ts'
import { SAME_AS_MOVE } from '../state/moves.ts'
import { LOAD_DUTY, UNLOAD_DUTY, WORK_DUTY } from '../state/work.ts'
import type { Pieces } from '../instant/pieces.ts'
import { addToTally, VALUE } from '../telling/tally.ts'
import { change, holdBack } from './change.ts'
import { changeOut, load, serve, unload } from './stay.ts'
import {
  CHANGES_AHEAD,
  MODE_LOOKS,
  MODE_RESTS,
  PACE_BIT,
  PLAIN_MOVE,
  type Recursion,
  STATION_AHEAD,
  TELLS_AHEAD,
  TELLS_HERE,
} from './recursion.ts'
import { addStationSeconds } from './seconds.ts'

/** Carriers taken in one call: a call that takes long goes on in code that was exchanged in its middle, which is slower. */
const SOME = 2_000
/** Calls in one piece, of some milliseconds in all. */
const CALLS = 50

/** Until the window is over for all of them. */
export function* advanceAll(recursion: Recursion): Pieces<void> {
  while (recursion.idle < recursion.order.length) {
    for (let call = 0; call < CALLS && recursion.idle < recursion.order.length; call++) advanceSome(recursion)
    yield
  }
}

function advanceSome(recursion: Recursion): void {
  const { line, last, warmup, order, mode, lookAt, readyAt, enteredAt } = recursion
  const { freeAt, heldUntil, asideFor, asideSince, asideSeconds, moveFlags, plainMoves, hasOwnSeconds, onlyDuty, onlyTask } = recursion
  const { zoneNext, exitClear } = line.graph
  const { zoneCarrier, moveSampler, clearSampler, paceSeconds, carrierZone } = line.moves
  const { zoneStation, stationServed, taskDone } = line.work
  const { zoneChanges } = line.transfers
  const { tasks } = line
  const { carrierSerial } = line.goods
  const { zoneSeconds, movesOut, carrierSeconds, stationSeconds, cycles, lapZone } = line.collector
  const carriers = order.length
  let events = 0
  let movesBefore = 0
  let { turn, idle } = recursion
  for (let taken = 0; taken < SOME && idle < carriers; taken++, turn = turn + 1 < carriers ? turn + 1 : 0) {
    const carrier = order[turn]!
    let zone = carrierZone[carrier]!
    let looks = mode[carrier] === MODE_LOOKS
    let look = lookAt[carrier]!
    let ready = readyAt[carrier]!
    let entered = enteredAt[carrier]!
    let station = zoneStation[zone]!
    let any = false
    // it counts as in its zone again when it has been taken as far as it goes
    zoneCarrier[zone] = NONE
    while ((looks ? look : ready) <= last) {
      const next = zoneNext[zone]!
      const flags = moveFlags[zone]!
      const plain = (flags & PLAIN_MOVE) > 0
      let open = freeAt[next]!
      if (open === Number.POSITIVE_INFINITY) break
      let isAside = false
      if (!plain) {
        open = Math.max(heldUntil[next]!, heldUntil[zone]!)
        isAside = asideFor[next] === carrier
        let ahead = isAside ? NONE : next
        while (ahead !== NONE && zoneCarrier[ahead] === NONE && asideFor[ahead] === NONE) {
          open = Math.max(open, freeAt[ahead]!)
          ahead = exitClear[ahead] === 0 ? NONE : zoneNext[ahead]!
        }
        if (ahead !== NONE) break
      }

      // when it leaves
      let at = look
      let atSpeed = 1
      if (looks && open <= look) {
        if ((flags & TELLS_HERE) > 0) addStationSeconds(recursion, station, S_EXCHANGING, look)
      } else {
        if (looks) {
          looks = false
          any = true
          if (ready > look && ready <= last) events++
          if ((flags & TELLS_HERE) > 0) addStationSeconds(recursion, station, S_EXCHANGING, ready)
        }
        atSpeed = 0
        at = Math.max(open, ready)
        if (at > last) break
        if (open > ready) {
          const since = Math.max(ready, warmup)
          const seconds = Math.max(open, warmup) - since
          carrierSeconds[carrier * CARRIER_WIDTH + (carrierSerial[carrier] === NONE ? C_EMPTY : C_WITH_PRODUCT)]! += seconds
          const stood = plain ? seconds : Math.min(seconds, Math.max(open, warmup) - heldUntil[zone]!)
          if (stood > 0) zoneSeconds[zone * ZONE_WIDTH + Z_BLOCKED]! += stood
          if (station !== NONE) {
            if ((flags & TELLS_HERE) > 0) addStationSeconds(recursion, station, S_BLOCKED, open)
            else {
              const longest = station * STATION_WIDTH + LONGEST_BLOCK
              if (seconds > stationSeconds[longest]!) stationSeconds[longest] = seconds
            }
          }
        }
      }
      any = true
      const now = Math.max(at, warmup)
      zoneSeconds[zone * ZONE_WIDTH + OCCUPIED_SECONDS]! += now - entered
      entered = now

      // counts
      if (station !== NONE && stationServed[station] === 1) {
        stationServed[station] = 0
        if (at > warmup) cycles[station]!++
      }
      if (zone === lapZone) {
        const { lap, carrierLaps } = line.collector
        const seconds = at - line.collector.carrierLapStart[carrier]!
        line.collector.carrierLapStart[carrier] = at
        if (at > warmup && !Number.isNaN(seconds)) {
          lap[VALUE] = seconds
          addToTally(lap)
          carrierLaps[carrier]!++
        }
      }

      // the zones ahead are its own from now on; then the move, and the clear behind it
      const stationHere = (flags & STATION_AHEAD) > 0 ? zoneStation[next]! : NONE
      let seconds = 0
      let clear = at
      let given = NONE
      const pace = flags >> PACE_BIT
      if (plain) {
        if ((flags & TELLS_AHEAD) > 0) addStationSeconds(recursion, stationHere, S_STARVED, at)
        seconds = paceSeconds[pace + 2 * atSpeed]!
        clear = at + paceSeconds[pace + PACE_CLEAR + atSpeed]!
        if (clear <= last) events++
        if (at > warmup) plainMoves[2 * zone + atSpeed]!++
        else {
          movesBefore++
          zoneSeconds[zone * ZONE_WIDTH + Z_VACATING]! += Math.max(clear - warmup, 0)
        }
      } else {
        if (at > warmup) movesOut[zone]!++
        else movesBefore++
        if (isAside) {
          asideFor[next] = NONE
          asideSeconds[next]! += now - asideSince[next]!
        } else {
          for (let ahead = next; ; ahead = zoneNext[ahead]!) {
            const stationAhead = zoneStation[ahead]!
            if (stationAhead !== NONE && hasOwnSeconds[stationAhead] === 1) addStationSeconds(recursion, stationAhead, S_STARVED, at)
            if (exitClear[ahead] === 0) break
            const exit = zoneNext[ahead]!
            asideFor[exit] = carrier
            asideSince[exit] = Math.max(now, heldUntil[exit]!)
          }
        }
        given = moveSampler[zone]!
        if (given === NONE) seconds = paceSeconds[pace + 2 * atSpeed]!
        else {
          drawInOrder(line, given, line.moves.moveStream[zone]!)
          seconds = line.draws.drawn[0]!
        }
        const givenClear = clearSampler[zone]!
        if (givenClear === NONE) clear += paceSeconds[pace + PACE_CLEAR + atSpeed]!
        else if (givenClear === SAME_AS_MOVE) clear += seconds
        else {
          drawInOrder(line, givenClear, line.moves.clearStream[zone]!)
          clear += line.draws.drawn[0]!
        }
        if (clear <= last) events++
        const until = Math.min(clear, last)
        if (until > now) zoneSeconds[zone * ZONE_WIDTH + Z_VACATING]! += until - now
        recursion.holds = 0
        if (zoneChanges[zone] === 1) {
          recursion.at[0] = clear
          recursion.seconds[0] = line.transfers.changeSeconds[2 * zone + line.transfers.backPosition[zone]!]!
          change(recursion, zone, Z_VACATING)
          clear = recursion.at[0]!
        }
      }
      freeAt[zone] = clear
      if ((flags & TELLS_HERE) > 0) addStationSeconds(recursion, station, S_EXCHANGING, clear)

      // the arrival: a look, or a stay
      let duty = WORK_DUTY + 1
      let task = NONE
      if (stationHere !== NONE) {
        task = onlyTask[stationHere]!
        if (task === NONE) {
          duty = UNLOAD_DUTY
          while (duty <= WORK_DUTY && !dutyApplies(line, stationHere, duty, carrier)) duty++
        } else {
          const only = onlyDuty[stationHere]!
          const isLoaded = carrierSerial[carrier] !== NONE
          if (isLoaded !== (only === LOAD_DUTY) && (only !== WORK_DUTY || taskDone[carrier * tasks + task] === 0)) duty = only
        }
      }
      const changes = (flags & CHANGES_AHEAD) > 0
      // asked of each of them, though few are held: a branch that is taken seldom has all of this function compiled anew
      const mayBeHeld = !plain
      if (given === NONE && duty > WORK_DUTY && !changes) {
        const toSpeed = paceSeconds[pace + 2 * atSpeed + SPEED]!
        zone = next
        station = stationHere
        looks = true
        look = at + toSpeed
        ready = at + seconds
        if (mayBeHeld) {
          recursion.at[0] = at
          recursion.seconds[0] = toSpeed
          holdBack(recursion)
          look = recursion.at[0]!
          recursion.seconds[0] = seconds - toSpeed
          holdBack(recursion)
          ready = recursion.at[0]!
        }
        if (look <= last) events++
        continue
      }
      zone = next
      station = stationHere
      looks = false
      ready = at + seconds
      if (mayBeHeld) {
        recursion.at[0] = at
        recursion.seconds[0] = seconds
        holdBack(recursion)
        ready = recursion.at[0]!
      }
      if (ready <= last) events++
      if (stationHere !== NONE) {
        if ((flags & TELLS_AHEAD) > 0) addStationSeconds(recursion, stationHere, S_EXCHANGING, ready)
        if (duty > WORK_DUTY) stationServed[stationHere] = 0
      }
      if (duty <= WORK_DUTY && task !== NONE) {
        // a stay of one task, whose time is known ahead
        stationServed[stationHere] = 1
        if (duty === LOAD_DUTY) load(recursion, carrier, ready)
        const had = carrier * tasks + task
        const serial = carrierSerial[carrier]!
        const start = Math.max(ready, warmup)
        if (taskDone[had] === 0) {
          ready += line.draws.taskUniforms[placeForProduct(line, task, serial)]!
          taskDone[had] = 1
        }
        const worked = Math.min(ready, last) - start
        if (worked > 0) {
          zoneSeconds[zone * ZONE_WIDTH + Z_WORKING]! += worked
          carrierSeconds[carrier * CARRIER_WIDTH + C_WORKED]! += worked
        }
        if (ready <= last) events++
        if (duty === UNLOAD_DUTY) unload(recursion, carrier, ready)
      } else if (duty <= WORK_DUTY || changes) {
        recursion.at[0] = ready
        if (duty <= WORK_DUTY) serve(recursion, carrier, zone, stationHere, duty)
        if (changes) changeOut(recursion, carrier, zone)
        ready = recursion.at[0]!
      }
    }
    zoneCarrier[zone] = carrier
    freeAt[zone] = Number.POSITIVE_INFINITY
    if (!any) {
      idle++
      continue
    }
    idle = 0
    carrierZone[carrier] = zone
    mode[carrier] = looks ? MODE_LOOKS : MODE_RESTS
    lookAt[carrier] = look
    readyAt[carrier] = ready
    enteredAt[carrier] = entered
  }
  recursion.turn = turn
  recursion.idle = idle
  line.events += events
  line.collector.movesBefore += movesBefore
}
