/** Phase 2 of an instant: everything that ends now ends. (MODEL.md §1) */
import { STORE } from '@loopwright/line'
import { countAsHad, dutiesUpTo, dutyAhead } from './duties.ts'
import { endOneArrival, endOneReceiverCycle, receive } from './goods.ts'
import { onGrid } from './grid.ts'
import { stationIn } from './held.ts'
import { isDone, standsAsWayInNeeds } from './moves.ts'
import { endOneWalk, letGo, pusherOf, setFree } from './people.ts'
import type { Carrier, Move, World } from './world.ts'

/** Ends one thing whose time has run out; false: there is none. */
export function endOne(w: World): boolean {
  for (const move of w.moves) if (endOfMove(w, move)) return true
  for (const carrier of w.carriers) if (endOfWork(w, carrier) || endOfRelease(w, carrier)) return true
  for (let zone = 0; zone < w.zones.length; zone++) if (endOfChange(w, zone)) return true
  return endOneWalk(w) || endOneArrival(w) || endOneReceiverCycle(w)
}

function endOfMove(w: World, move: Move): boolean {
  if (move.clearLeft === 0) {
    move.clearLeft = null
    w.log.push({ t: w.t, what: 'clear', zone: move.from, carrier: move.carrier })
    freeIfNothingHinders(w, move.from)
    forget(w, move)
    return true
  }
  if (move.left !== 0) return false
  if (move.stage === 'on its way to look') {
    move.stage = 'looking'
    w.carriers[move.carrier]!.waitsSince = w.t // "a passing one from the end of its move"
    return true
  }
  if (move.stage === 'on its way to rest') {
    move.stage = 'arrived'
    arriveAtRest(w, move)
    forget(w, move)
    return true
  }
  return false
}

/** "A move is in progress until it has arrived and i is clear" */
export function forget(w: World, move: Move): void {
  if (move.stage === 'arrived' && move.clearLeft === null) w.moves = w.moves.filter((other) => other !== move)
}

function arriveAtRest(w: World, move: Move): void {
  if (move.to !== STORE) w.zones[move.to]!.state = 'occupied'
  const carrier = w.carriers[move.carrier]!
  carrier.atRest = true
  carrier.dutiesBehind = 0
  carrier.release = 'over' // there is one only after a duty
  w.log.push({ t: w.t, what: 'at rest', zone: move.to, carrier: move.carrier })
  noteIfDone(w, carrier)
  const pusher = pusherOf(w, move.carrier)
  if (pusher !== null) {
    w.log.push({ t: w.t, what: 'push end', operator: w.operators.indexOf(pusher), carrier: move.carrier })
    setFree(w, pusher) // "the operator is free when the carrier has arrived"
  }
}

export function noteAllDone(w: World): void {
  for (const carrier of w.carriers) noteIfDone(w, carrier)
}

/** "a carrier waits from the instant it is done" */
function noteIfDone(w: World, carrier: Carrier): void {
  if (carrier.waitsSince === null && isDone(w, carrier)) carrier.waitsSince = w.t
}

/** The zone turns free when it is clear and its transfer stands as the way in needs. (§3, §4) */
function freeIfNothingHinders(w: World, zone: number): void {
  if (w.zones[zone]!.state !== 'vacating' || !isClear(w, zone) || !standsAsWayInNeeds(w, zone)) return
  w.zones[zone]!.state = 'free'
  w.zones[zone]!.carrier = null
}

/** no carrier is on its way out of the zone before its clear */
export function isClear(w: World, zone: number): boolean {
  return !w.moves.some((move) => move.from === zone && move.clearLeft !== null)
}

function endOfWork(w: World, carrier: Carrier): boolean {
  if (carrier.work === null || carrier.work.left !== 0) return false
  const { duty, tasks } = carrier.work
  const index = stationIn(w, carrier.place)!
  const station = w.spec.stations[index]!
  const carrierIndex = w.carriers.indexOf(carrier)
  carrier.work = null
  carrier.dutiesBehind = dutiesUpTo(duty)
  const product = carrier.product!
  const isRejected = countAsHad(w, tasks, product)
  w.log.push({ t: w.t, what: 'duty end', zone: carrier.place, carrier: carrierIndex, station: index, duty })
  if (isRejected) w.log.push({ t: w.t, what: 'reject', zone: carrier.place, carrier: carrierIndex, station: index, serial: product.serial })
  if (duty === 'unload') {
    const { serial, rejected } = product
    w.log.push({ t: w.t, what: 'unload', zone: carrier.place, carrier: carrierIndex, serial, rejected })
    carrier.product = null
    receive(w, index)
  }
  if (dutyAhead(w, index, carrier) === null) {
    // "after the last duty, release …; a release of 0 s, the default, is none"
    const none = station.releaseSeconds.kind === 'constant' && onGrid(station.releaseSeconds.value) === 0
    carrier.release = none ? 'over' : 'ahead'
    if (none) letGo(w, index)
    noteIfDone(w, carrier)
  }
  return true
}

function endOfRelease(w: World, carrier: Carrier): boolean {
  if (typeof carrier.release === 'string' || carrier.release.left !== 0) return false
  carrier.release = 'over'
  const station = stationIn(w, carrier.place)!
  letGo(w, station)
  w.log.push({ t: w.t, what: 'release end', zone: carrier.place, carrier: w.carriers.indexOf(carrier), station })
  noteIfDone(w, carrier)
  return true
}

function endOfChange(w: World, index: number): boolean {
  const zone = w.zones[index]!
  if (zone.change === null || zone.change.left !== 0) return false
  zone.position = zone.change.to
  zone.change = null
  w.log.push({ t: w.t, what: 'change end', zone: index, to: zone.position })
  if (zone.state === 'occupied') noteIfDone(w, w.carriers[zone.carrier!]!)
  else freeIfNothingHinders(w, index)
  return true
}
