/** Phase 3 of an instant: starts, one at a time, the first by the order of MODEL.md §1. */
import { drawWorkSeconds, dutyAhead, productIsThere, variantOf } from './duties.ts'
import { forget, isClear } from './ends.ts'
import { stationIsHeld, zoneIsHeld } from './held.ts'
import { onGrid } from './grid.ts'
import { moveTimes } from './motion.ts'
import { alwaysStops, lookingMove, moveCanStart, standsAsWayInNeeds, standsAsWayOutNeeds, workIsBehind, zonesToClaim } from './moves.ts'
import { type Carrier, pathOut, positionIn, positionOut, type World } from './world.ts'

/** Starts one thing; false: nothing can start. */
export function startOne(w: World): boolean {
  return setOneAside(w) || startOneWork(w) || startOneRelease(w) || startOneChange(w) || startOneMove(w)
}

/** whether anything could start "as if no stop were there" (§10) */
export function somethingCouldStart(w: World): boolean {
  for (let station = 0; station < w.spec.stations.length; station++) {
    if (mayBeSetAside(w, station, true) || workMayStart(w, station, true) || releaseMayStart(w, station, true)) return true
  }
  if (w.zones.some((_, zone) => changeThatMayStart(w, zone, true) !== null)) return true
  return w.carriers.some((_, carrier) => moveCanStart(w, carrier, true))
}

/** the carrier at rest in the station's zone */
export function carrierAt(w: World, station: number): Carrier | null {
  const zone = w.zones[w.spec.stations[station]!.zone]!
  return zone.state === 'occupied' ? w.carriers[zone.carrier!]! : null
}

/** the duty for which the carrier at the station waits */
function dutyWaiting(w: World, station: number): 'unload' | 'load' | 'work' | null {
  const carrier = carrierAt(w, station)
  if (carrier === null || carrier.work !== null) return null
  return dutyAhead(w.spec.stations[station]!, carrier)
}

export function waitsForProduct(w: World, station: number): boolean {
  return dutyWaiting(w, station) === 'load' && !w.setAside[station]
}

function mayBeSetAside(w: World, station: number, asIfNoStops: boolean): boolean {
  if (!waitsForProduct(w, station) || (!asIfNoStops && stationIsHeld(w, station))) return false
  return productIsThere(w, w.setAside.filter((aside) => aside).length)
}

/** "it is set aside for the waiting load station with the lowest index that is not held" (§8) */
function setOneAside(w: World): boolean {
  const station = w.spec.stations.findIndex((_, index) => mayBeSetAside(w, index, false))
  if (station < 0) return false
  w.setAside[station] = true
  return true
}

function workMayStart(w: World, station: number, asIfNoStops: boolean): boolean {
  const duty = dutyWaiting(w, station)
  if (duty === null || (!asIfNoStops && stationIsHeld(w, station))) return false
  return duty !== 'load' || w.setAside[station]!
}

function startOneWork(w: World): boolean {
  const index = w.spec.stations.findIndex((_, station) => workMayStart(w, station, false))
  if (index < 0) return false
  const station = w.spec.stations[index]!
  const carrier = carrierAt(w, index)!
  const carrierIndex = w.carriers.indexOf(carrier)
  const duty = dutyWaiting(w, index)!
  w.log.push({ t: w.t, what: 'duty start', zone: station.zone, carrier: carrierIndex, station: index, duty })
  if (duty === 'load') {
    // "load takes the next product at the start of its work"
    const serial = w.productsLoaded
    const variant = variantOf(w, serial)
    w.setAside[index] = false
    w.productsLoaded += 1
    w.loadedByVariant[variant]! += 1
    carrier.product = { serial, variant, loadedAt: w.t, had: new Set() }
    w.log.push({ t: w.t, what: 'load', zone: station.zone, carrier: carrierIndex, serial, variant })
  }
  carrier.work = { duty, left: drawWorkSeconds(w, station, duty, carrier.product!) }
  return true
}

function releaseMayStart(w: World, station: number, asIfNoStops: boolean): boolean {
  return carrierAt(w, station)?.release === 'ahead' && (asIfNoStops || !stationIsHeld(w, station))
}

function startOneRelease(w: World): boolean {
  const index = w.spec.stations.findIndex((_, station) => releaseMayStart(w, station, false))
  if (index < 0) return false
  const station = w.spec.stations[index]!
  const carrier = carrierAt(w, index)!
  carrier.release = { left: w.draws.inOrder(`release/${station.name}`, station.releaseSeconds) }
  w.log.push({ t: w.t, what: 'release start', zone: station.zone, carrier: w.carriers.indexOf(carrier), station: index })
  return true
}

/** the position to which the zone's transfer is to change now; null: no change can start */
function changeThatMayStart(w: World, index: number, asIfNoStops: boolean): 'low' | 'high' | null {
  const zone = w.zones[index]!
  if (zone.position === null || zone.change !== null || (!asIfNoStops && zoneIsHeld(w, index))) return null
  // "After the carrier has come to rest (and its work there, if any, is done and released), the change … starts at once"
  if (zone.state === 'occupied' && workIsBehind(w, w.carriers[zone.carrier!]!) && !standsAsWayOutNeeds(w, index)) {
    return positionOut(w.spec, index)
  }
  // "After the zone is clear, the change back to the position of the way in starts at once"
  if (zone.state === 'vacating' && isClear(w, index) && !standsAsWayInNeeds(w, index)) return positionIn(w.spec, index)
  return null
}

function startOneChange(w: World): boolean {
  for (let index = 0; index < w.zones.length; index++) {
    const to = changeThatMayStart(w, index, false)
    if (to === null) continue
    const transfer = w.spec.zones[index]!.transfer!
    w.zones[index]!.change = { to, left: onGrid(to === 'high' ? transfer.liftSeconds : transfer.lowerSeconds) }
    w.log.push({ t: w.t, what: 'change start', zone: index, to })
    return true
  }
  return false
}

/** "moves start (longest waiting, then lower path index)" */
function startOneMove(w: World): boolean {
  let first: number | null = null
  for (let c = 0; c < w.carriers.length; c++) {
    if (!moveCanStart(w, c)) continue
    if (first === null || ranksBefore(w, c, first)) first = c
  }
  if (first === null) return false
  startMove(w, first)
  return true
}

function ranksBefore(w: World, a: number, b: number): boolean {
  const [left, right] = [w.carriers[a]!, w.carriers[b]!]
  if (left.waitsSince !== right.waitsSince) return left.waitsSince! < right.waitsSince!
  return pathOut(w.spec, left.zone) < pathOut(w.spec, right.zone)
}

function startMove(w: World, carrierIndex: number): void {
  const carrier = w.carriers[carrierIndex]!
  const from = carrier.zone
  const path = pathOut(w.spec, from)
  const to = w.spec.paths[path]!.to
  for (const zone of zonesToClaim(w, carrierIndex)) {
    w.zones[zone]!.state = 'claimed'
    w.zones[zone]!.carrier = carrierIndex
  }
  const before = lookingMove(w, carrierIndex)
  if (before !== null) {
    before.stage = 'arrived'
    forget(w, before)
    w.log.push({ t: w.t, what: 'pass', zone: from, carrier: carrierIndex })
  }
  const start = before === null ? 'rest' : 'speed'
  const times = moveTimes(w.spec, w.draws, path, start)
  const stops = times.toLook === null || alwaysStops(w, carrier, to)
  w.zones[from]!.state = 'vacating'
  w.moves.push({
    carrier: carrierIndex,
    from,
    to,
    start,
    stage: stops ? 'on its way to rest' : 'on its way to look',
    left: stops ? times.toRest : times.toLook!,
    brakeSeconds: stops ? 0 : times.toRest - times.toLook!,
    clearLeft: times.toClear,
  })
  w.log.push({ t: w.t, what: 'move start', path, zone: from, carrier: carrierIndex, from: start })
  carrier.zone = to
  carrier.atRest = false
  carrier.waitsSince = null
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
