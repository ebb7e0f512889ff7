/**
 * The common instants of any line, without a list of what may start and without a judge: one timer ends, or several moves at once, and no stop has a say in what follows. State
 * and columns are those of instant.ts, which handles every other instant, every trace and every check; what is told is the same to the last bit. Zones that turn free are in
 * quickFree.ts, the moves that start in quickStart.ts and quickStore.ts. (MODEL.md §1, §3, §5, §11)
 */

import { assert } from '@loopwright/kernel'
import { timeClear, waitFor } from '../moves/clear.ts'
import { standsStill } from '../instant/gridlock.ts'
import { handleDue } from '../instant/instant.ts'
import { inOne, type Pieces, Progress } from '../instant/pieces.ts'
import { SPEED } from '../moves/motion.ts'
import { pathThatStarts } from '../moves/move.ts'
import { settleRests, stand } from './quickRest.ts'
import { goesOnCalled, onCall, startsStayCalled } from './quickCalls.ts'
import { turnFree } from './quickFree.ts'
import { goesOn, startsStay } from './quickStay.ts'
import { operateZone } from '../stops/operation.ts'
import { areQuick } from './quickTogether.ts'
import { startQuick } from './quickStart.ts'
import { endsInStore, startsAtStore } from './quickStore.ts'
import { canLeave, isHeldAhead, turnOut } from './quickTransfer.ts'
import { DIVERTS, EXIT_CLEAR, NOT_QUICK, QUICK, type Quick, TRANSFER, TURNS } from './quickZones.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { BRAKING, CLAIMED, CLEAR_KNOWN, DONE, FREE, LOOKING, LOOK_FROM_REST, OCCUPIED, VACATING } from '../state/moves.ts'
import { TO_WAY_OUT } from '../state/transfers.ts'
import { LOAD_DUTY } from '../state/work.ts'
import { hasProduct } from '../goods/supply.ts'
import { endChange } from '../moves/transfer.ts'

/** Leaves the only timer of an instant to instant.ts; of several none, since those before it are done with. */
function handOver(line: Line, quick: Quick, count: number): void {
  assert(count === 1, 'one of several timers of a quick instant is not quick')
  settleRests(line, quick)
  handleDue(line, 1)
}

/** Calls of `runSome` in one piece, of some milliseconds in all; and pieces that never have one instant. */
const CALLS = 20
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

/** Instants handled in one call: a call that takes long goes on in code that was exchanged in its middle, which is slower. */
const SOME = 2_000
const OVER = 0
const UP_TO = 1
const AGAIN = 2

function runSome(line: Line, quick: Quick, until: number): number {
  const { queue, moves, transfers } = line
  const { due } = line.slots
  const { times } = queue
  const { arrivalSlot, clearSlot, workSlot, changeSlot, storeSlot, operatorSlot } = line.slots
  const { zoneStation, stationZone, hasDuty } = line.work
  const { stationHeld } = line.stops
  const { zoneState, zoneClearing, zoneCarrier, zoneClaimant, pathLooks, pathCarrier } = moves
  const { zoneChange } = transfers
  const { zoneHeld, pathHeld } = line.stops
  const { hasCalls, followsZones } = line
  const { carrierPhase } = moves
  const { onlyOut, pathTo, manualStation } = line.graph
  const byHand = line.staff.manualFrom.length > 0
  const { flags, mayHold: held, restAt, restIsKnown, lookAt } = quick
  quick.until = until
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
        if (slot >= operatorSlot) onCall(line, quick, slot)
        else if (slot < arrivalSlot || !endsInStore(line, quick, slot - storeSlot)) handOver(line, quick, count)
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
        if ((flag & QUICK) === 0 || (byHand && slot < clearSlot && manualStation[came] !== NONE)) {
          handOver(line, quick, count)
          continue
        }
        path = onlyOut[from]!
        const diverts = (flag & DIVERTS) > 0
        const nearExit = (flag & EXIT_CLEAR) > 0
        if (held && (zoneHeld[from]! > 0 || (diverts || nearExit ? isHeldAhead(line, from) : zoneHeld[pathTo[path]!]! > 0))) {
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
            const to = pathTo[path]!
            isFree = zoneState[to] === FREE || (zoneClearing[to] === CLEAR_KNOWN && times[clearSlot + to]! <= now)
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
            const to = diverts ? NONE : pathTo[path]!
            const isOff = station !== NONE && stationHeld[station]! > 0
            // at rest before the zone ahead is clear, it changes nothing for others
            const clears = diverts || zoneState[to] !== VACATING ? Number.POSITIVE_INFINITY : times[clearSlot + to]!
            if (diverts || followsZones || isOff || clears < rest || ((flag | flags[to]!) & TRANSFER) > 0) {
              times[slot] = rest
              queue.schedule(slot)
              if (followsZones) operateZone(line, from, slot)
              continue
            }
            restAt[carrier] = rest
            lookAt[carrier] = Number.NEGATIVE_INFINITY
            restIsKnown[carrier] = 1
            quick.known++
            if (zoneClearing[to] === CLEAR_KNOWN) timeClear(line, to)
            continue
          }
          atSpeed = 1
          line.activity--
          pathCarrier[came] = NONE
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
            const to = pathTo[path]!
            isFree = zoneState[to] === FREE || (zoneClearing[to] === CLEAR_KNOWN && times[clearSlot + to]! <= now)
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
        const turned = slot >= workSlot
        path = turnFree(line, quick, turned ? slot - changeSlot : slot - clearSlot, turned, count === 1)
        if (path === NOT_QUICK) handOver(line, quick, count)
        if (path < 0) continue
      }

      if (!startsAtStore(line, quick, path, atSpeed)) startQuick(line, quick, path, atSpeed)
    }
  }
  return AGAIN
}
