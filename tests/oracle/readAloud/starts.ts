/** Phase 3 of an instant: starts, one at a time, the first by the order of MODEL.md §1. */

import { STORE } from '@loopwright/line'
import { drawWorkSeconds, tasksOfDuty, variantOf } from './duties.ts'
import { forget, isClear, noteAllDone } from './ends.ts'
import { setProductAside, takeProduct } from './goods.ts'
import { onGrid } from './grid.ts'
import { endsAreHeld, stationIn, stationIsHeld, zoneIsHeld } from './held.ts'
import { moveTimes } from './motion.ts'
import { alwaysStops, claim, fixWays, lookingMove, offerOf, positionForWayOut, standsAsWayInNeeds, workIsBehind } from './moves.ts'
import { couldSend, noteCalls, operatorsAreThere, pusherOf, sendOne } from './people.ts'
import { carrierAt, dutyWaiting, isReady, placeMayBeSetAside, productMayBeSetAside } from './readiness.ts'
import { nextMove } from './rightOfWay.ts'
import { type Move, positionIn, type World } from './world.ts'

/**
 * Starts one thing; false: nothing can start. Position changes start "at once", before the starts of the list;
 * only then are ways out fixed, for a change of 0 s is one of those things that end at the instant.
 */
export function startOne(w: World): boolean {
  if (startOneChange(w)) return true
  fixWays(w)
  noteAllDone(w)
  noteCalls(w)
  return startOneChange(w) || setOneAside(w) || sendOne(w) || startOneWork(w) || startOneMove(w)
}

/** whether anything could start "as if no stop were there" (§10) */
export function somethingCouldStart(w: World): boolean {
  for (let station = 0; station < w.spec.stations.length; station++) {
    if (productMayBeSetAside(w, station, true) || placeMayBeSetAside(w, station, true)) return true
    if (workMayStart(w, station, true) || releaseMayStart(w, station, true)) return true
  }
  if (couldSend(w)) return true
  if (w.zones.some((_, zone) => changeThatMayStart(w, zone, true) !== null)) return true
  return w.carriers.some((_, carrier) => offerOf(w, carrier, true) !== null)
}

/** "products and receiver places are set aside": "for the waiting load station with the lowest index that is not held" (§8) */
function setOneAside(w: World): boolean {
  const loads = w.spec.stations.findIndex((_, index) => productMayBeSetAside(w, index, false))
  if (loads >= 0) {
    setProductAside(w, loads)
    return true
  }
  const unloads = w.spec.stations.findIndex((_, index) => placeMayBeSetAside(w, index, false))
  if (unloads < 0) return false
  w.receivers[unloads]!.setAside = true
  return true
}

function workMayStart(w: World, station: number, asIfNoStops: boolean): boolean {
  if (!asIfNoStops && stationIsHeld(w, station)) return false
  return isReady(w, station) && operatorsAreThere(w, station)
}

/** "work starts (lower station index)", and so does release */
function startOneWork(w: World): boolean {
  for (let station = 0; station < w.spec.stations.length; station++) {
    if (releaseMayStart(w, station, false)) {
      startRelease(w, station)
      return true
    }
    if (workMayStart(w, station, false)) {
      startWork(w, station)
      return true
    }
  }
  return false
}

function startWork(w: World, index: number): void {
  const station = w.spec.stations[index]!
  const carrier = carrierAt(w, index)!
  const carrierIndex = w.carriers.indexOf(carrier)
  const duty = dutyWaiting(w, index)!
  w.log.push({ t: w.t, what: 'duty start', zone: station.zone, carrier: carrierIndex, station: index, duty })
  if (duty === 'load') {
    // "load takes the next product at the start of its work"
    const serial = w.productsLoaded
    const variant = variantOf(w, serial)
    takeProduct(w, index)
    w.productsLoaded += 1
    w.loadedByVariant[variant]! += 1
    carrier.product = { serial, variant, loadedAt: w.t, had: new Set(), rejected: false, list: new Set(), listIsNew: false }
    w.log.push({ t: w.t, what: 'load', zone: station.zone, carrier: carrierIndex, serial, variant })
  }
  const tasks = tasksOfDuty(w, index, duty, carrier)
  carrier.work = { duty, tasks, left: drawWorkSeconds(w, tasks, carrier.product!) }
}

function releaseMayStart(w: World, station: number, asIfNoStops: boolean): boolean {
  return carrierAt(w, station)?.release === 'ahead' && (asIfNoStops || !stationIsHeld(w, station))
}

function startRelease(w: World, index: number): void {
  const station = w.spec.stations[index]!
  const carrier = carrierAt(w, index)!
  carrier.release = { left: w.draws.inOrder(`release/${station.name}`, station.releaseSeconds) }
  w.log.push({ t: w.t, what: 'release start', zone: station.zone, carrier: w.carriers.indexOf(carrier), station: index })
}

interface Change {
  readonly to: 'low' | 'high'
  readonly why: 'out' | 'back' | 'in'
}

/** the position to which the zone's transfer is to change now; null: no change can start */
function changeThatMayStart(w: World, index: number, asIfNoStops: boolean): Change | null {
  const zone = w.zones[index]!
  if (zone.position === null || zone.change !== null || (!asIfNoStops && zoneIsHeld(w, index))) return null
  // "After the carrier has come to rest (and its work there, if any, is done and released), the change … starts at once"
  if (zone.state === 'occupied') {
    const carrier = w.carriers[zone.carrier!]!
    const to = workIsBehind(w, carrier) ? positionForWayOut(w, carrier) : null
    return to === null || to === zone.position ? null : { to, why: 'out' }
  }
  // "After the zone is clear, the change back to the position of the way in starts at once"
  if (zone.state === 'vacating') {
    return isClear(w, index) && !standsAsWayInNeeds(w, index) ? { to: positionIn(w.spec, index)!, why: 'back' } : null
  }
  if (zone.state === 'claimed') return changeForWinner(w, index, asIfNoStops)
  return null
}

/** "a carrier at rest that wins it in the wrong position makes it `claimed`, the change runs, and then the move starts" */
function changeForWinner(w: World, index: number, asIfNoStops: boolean): Change | null {
  const { carrier, position } = w.zones[index]!
  const { atRest, place, waitsSince, fixedWays } = w.carriers[carrier!]!
  if (!atRest || waitsSince === null) return null
  const way = fixedWays.get(place)
  if (way === undefined || w.spec.paths[way]!.to !== index) return null
  if (!asIfNoStops && endsAreHeld(w, way)) return null
  if (w.spec.paths[way]!.manual !== null && pusherOf(w, carrier!) === null) return null // it turns as the operator sets off
  const { toPosition } = w.spec.paths[way]!
  return toPosition === position ? null : { to: toPosition, why: 'in' }
}

function startOneChange(w: World): boolean {
  for (let index = 0; index < w.zones.length; index++) {
    const change = changeThatMayStart(w, index, false)
    if (change === null) continue
    const { to, why } = change
    const transfer = w.spec.zones[index]!.transfer!
    w.zones[index]!.change = { to, left: onGrid(to === 'high' ? transfer.liftSeconds : transfer.lowerSeconds) }
    w.log.push({ t: w.t, what: 'change start', zone: index, to, why })
    return true
  }
  return false
}

/** "moves start (longest waiting, then lower path index)" */
function startOneMove(w: World): boolean {
  const offer = nextMove(w)
  if (offer === null) return false
  claim(w, offer.carrier, offer.path)
  if (!offer.wins) startMove(w, offer.carrier, offer.path)
  return true
}

function startMove(w: World, carrierIndex: number, path: number): void {
  const carrier = w.carriers[carrierIndex]!
  const { from, to } = w.spec.paths[path]!
  const before = lookingMove(w, carrierIndex)
  if (before !== null) {
    before.stage = 'arrived'
    forget(w, before)
    w.log.push({ t: w.t, what: 'pass', zone: from, carrier: carrierIndex })
  }
  const start = before === null ? 'rest' : 'speed'
  const times = moveTimes(w.spec, w.draws, path, start)
  const stops = times.toLook === null || alwaysStops(w, carrier, path)
  const left = stops ? times.toRest : times.toLook!
  if (from !== STORE) w.zones[from]!.state = 'vacating'
  if (to !== STORE) w.zones[to]!.lastPathIn = path
  w.startsOut.set(from, (w.startsOut.get(from) ?? 0) + 1)
  carrier.fixedWays.delete(from)
  if (carrier.product !== null) carrier.product.listIsNew = false
  w.moves.push({
    carrier: carrierIndex,
    path,
    from,
    to,
    start,
    stage: stops ? 'on its way to rest' : 'on its way to look',
    left,
    brakeSeconds: stops ? 0 : times.toRest - times.toLook!,
    clearLeft: times.toClear,
    ...safetyOf(w, from, to, left),
  })
  w.log.push({ t: w.t, what: 'move start', path, zone: from, carrier: carrierIndex, from: start })
  carrier.place = to
  carrier.atRest = false
  carrier.waitsSince = null
  if (w.spec.paths[path]!.manual !== null) {
    w.log.push({ t: w.t, what: 'push start', operator: w.operators.indexOf(pusherOf(w, carrierIndex)!), carrier: carrierIndex })
  }
}

/** "one station draws per move that touches a station zone (j's if it has a safety stop, else i's), two uniforms" */
function safetyOf(w: World, from: number, to: number, plannedSeconds: number): Pick<Move, 'safetyLeft' | 'safetyStation'> {
  const station =
    [to, from].map((place) => stationIn(w, place)).find((index) => index !== null && w.spec.stations[index]!.safetyStop !== null) ?? null
  if (station === null) return { safetyLeft: null, safetyStation: null }
  const { name, safetyStop } = w.spec.stations[station]!
  const [first, second] = [w.draws.uniformInOrder(`safety/${name}`), w.draws.uniformInOrder(`safety/${name}`)]
  return { safetyLeft: first < safetyStop!.probability ? onGrid(second * plannedSeconds) : null, safetyStation: station }
}

/** Phase 4: "the carriers that reached the end of a move now and could not pass begin to brake"; false: there are none. */
export function brakeAll(w: World): boolean {
  const looking = w.moves.filter((move) => move.stage === 'looking')
  for (const move of looking) {
    move.stage = 'on its way to rest'
    move.left = move.brakeSeconds
    w.carriers[move.carrier]!.waitsSince = null // it waits "from the instant it is at rest"
    w.log.push({ t: w.t, what: 'brake', zone: move.to, carrier: move.carrier })
  }
  return looking.length > 0
}
