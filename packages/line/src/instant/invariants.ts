/** What holds after every instant, whatever the line; checked in verify mode. Each rule has its reason. */
import { assert, isOnGrid } from '@loopwright/kernel'
import { canSetAside, isPrepared } from '../work/calls.ts'
import { drivenPathThatStarts, pathThatStarts } from '../moves/move.ts'
import { hasFreeOperator, isManned } from '../operators/operators.ts'
import { findSectionEnd, findZoneEnd } from '../stops/operation.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import {
  BRAKING,
  CHANGING,
  CLAIMED,
  CLEAR_NOW,
  CLEAR_TIMED,
  DONE,
  FREE,
  LOOKING,
  MOVING,
  OCCUPIED,
  RELEASING,
  VACATING,
  WORK_PENDING,
  WORKING,
} from '../state/moves.ts'
import { BACK, BACK_PENDING, TO_WAY_IN, TO_WAY_OUT, TO_WAY_OUT_PENDING } from '../state/transfers.ts'
import { LOAD_DUTY } from '../state/work.ts'

export function checkInvariants(line: Line): void {
  assert(isOnGrid(line.now), 'an instant lies off the clock grid')
  assert(line.moves.lookList.length === 0, 'a carrier still looks at the end of an instant')
  checkPlaces(line)
  checkZones(line)
  checkTimers(line)
  if (line.sources + line.stops.breakTimes.length + line.safety.safetyStations.length > 0) checkHolds(line)
  if (line.followsZones) checkOperation(line)
  if (!line.graph.isLoop) checkStarts(line)
  if (line.hasCalls) checkCalls(line)
}

/** Each carrier is in exactly one zone, so that occupancies sum to N. */
function checkPlaces(line: Line): void {
  const { moves, goods } = line
  let held = moves.storeCount
  for (let zone = 0; zone < line.zones; zone++) if (moves.zoneCarrier[zone] !== NONE) held++
  for (let carrier = 0; carrier < line.carriers; carrier++) {
    const zone = moves.carrierZone[carrier]!
    if (zone !== line.store) assert(moves.zoneCarrier[zone] === carrier, 'a carrier is not in the zone it is in')
    else if (moves.carrierPhase[carrier] === MOVING) held++
    else assert(moves.carrierPhase[carrier] === DONE, 'a carrier in the store is not done')
    assert(moves.carrierPhase[carrier] !== LOOKING, 'a carrier looks at the end of an instant')
    assert(goods.carrierSerial[carrier]! < goods.nextSerial, 'a product was never loaded')
  }
  assert(held === line.carriers, 'the zones do not hold as many carriers as there are')
  checkStore(line)
}

/** The store is always free, and its carriers stand in the order in which they came. */
function checkStore(line: Line): void {
  const { store, moves } = line
  const item = (k: number): number => moves.storeItems[(moves.storeFirst + k) % line.carriers]!
  assert(moves.zoneState[store] === FREE && line.stops.zoneHeld[store] === 0 && moves.zoneClaimant[store] === NONE, 'the store is not free')
  assert(moves.zoneCarrier[store] === (moves.storeCount === 0 ? NONE : item(0)), 'the first in the store is not the one that may leave')
  for (let k = 0; k < moves.storeCount; k++) {
    assert(moves.carrierZone[item(k)] === store, 'a carrier stands in the store that is elsewhere')
    if (k > 0) assert(moves.carrierSince[item(k - 1)]! <= moves.carrierSince[item(k)]!, 'carriers in the store stand in the wrong order')
  }
}

/** A zone's state says whether a carrier is in it and what it does. */
function checkZones(line: Line): void {
  for (let zone = 0; zone < line.zones; zone++) {
    const carrier = line.moves.zoneCarrier[zone]!
    const claimant = line.moves.zoneClaimant[zone]!
    const phase = carrier === NONE ? NONE : line.moves.carrierPhase[carrier]!
    const moves = phase === MOVING || phase === BRAKING
    switch (line.moves.zoneState[zone]) {
      case FREE:
        assert(carrier === NONE && claimant === NONE, 'a free zone holds or expects a carrier')
        break
      case CLAIMED:
        assert(claimant !== NONE && (carrier === NONE || carrier === claimant), 'a claimed zone expects another carrier than it holds')
        assert(carrier === NONE || moves, 'a carrier stands in a claimed zone')
        break
      case OCCUPIED:
        assert(carrier !== NONE && claimant === NONE && !moves, 'an occupied zone has no carrier at rest')
        break
      default:
        assert(
          line.moves.zoneState[zone] === VACATING && carrier === NONE && claimant === NONE,
          'a vacating zone holds or expects a carrier',
        )
        assert(
          line.moves.zoneClearing[zone] !== CLEAR_NOW || line.transfers.zoneChange[zone] !== 0,
          'a zone is vacating with nobody on the way out',
        )
    }
  }
}

/** The timers under way are exactly those that the state implies: none is forgotten, none left over. */
function checkTimers(line: Line): void {
  const { slots, moves, transfers } = line
  let activity = 0
  const expect = (slot: number, wanted: boolean): void => {
    const runs = line.queue.isPending(slot)
    const isHeld = slots.isHeldBack[slot] === 1
    assert((runs || isHeld) === wanted, 'a timer is missing or left over')
    if (!wanted) return
    assert(!(runs && isHeld), 'a timer runs and is held')
    assert(!runs || line.queue.times[slot]! > line.now, 'a timer is left behind')
    activity++
  }
  for (let path = 0; path < line.paths; path++) {
    const carrier = moves.pathCarrier[path]!
    assert(
      carrier === NONE || moves.carrierZone[carrier] === line.graph.pathTo[path],
      'a carrier is under way to another zone than it counts in',
    )
    assert(carrier === NONE || moves.carrierPath[carrier] === path, 'a carrier is under way on another path than it came by')
    expect(slots.arrivalSlot + path, carrier !== NONE)
  }
  for (let zone = 0; zone < line.zones; zone++) {
    expect(slots.clearSlot + zone, moves.zoneClearing[zone] === CLEAR_TIMED)
    const change = transfers.zoneChange[zone]
    expect(slots.changeSlot + zone, change === TO_WAY_OUT || change === BACK || change === TO_WAY_IN)
    if (change === TO_WAY_IN) {
      assert(moves.zoneState[zone] === CLAIMED && moves.zoneCarrier[zone] === NONE, 'a transfer turns to a way in while it is in use')
      assert(moves.carrierPhase[moves.zoneClaimant[zone]!] === DONE, 'a transfer turns for a carrier that is not at rest')
    }
  }
  if (slots.operatorSlot > slots.storeSlot) {
    for (let carrier = 0; carrier < line.carriers; carrier++) {
      expect(slots.storeSlot + carrier, moves.carrierZone[carrier] === line.store && moves.carrierPhase[carrier] === MOVING)
    }
  }
  for (let station = 0; station < line.stations; station++) {
    const carrier = moves.zoneCarrier[line.work.stationZone[station]!]!
    const phase = carrier === NONE ? NONE : moves.carrierPhase[carrier]!
    expect(slots.workSlot + station, phase === WORKING || phase === RELEASING)
  }
  for (let carrier = 0; carrier < line.carriers; carrier++) {
    if (moves.carrierPhase[carrier] === CHANGING)
      assert(transfers.zoneChange[moves.carrierZone[carrier]!] === TO_WAY_OUT, 'nothing changes under a carrier')
  }
  for (let operator = 0; operator < line.operators; operator++)
    expect(slots.operatorSlot + operator, line.staff.operatorWalks[operator] === 1)
  assert(activity === line.activity, 'the count of what is under way is wrong')
}

/** Nothing is left that could start: whoever may try has been told to. On a plain loop asking would give timers to clears that have none. */
function checkStarts(line: Line): void {
  const { stops } = line
  for (let place = 0; place <= line.zones; place++) {
    const way = pathThatStarts(line, place, false)
    const waits =
      way === NONE ||
      (line.graph.manualStation[way] !== NONE &&
        (stops.breaksNow > 0 || !isManned(line, way)) &&
        drivenPathThatStarts(line, place, false) === NONE)
    assert(waits, 'a move that could start was forgotten')
    const change = line.transfers.zoneChange[place]
    assert(
      (change !== TO_WAY_OUT_PENDING && change !== BACK_PENDING) || stops.zoneHeld[place]! > 0,
      'a change that could start was forgotten',
    )
  }
}

/** Whoever calls is served as soon as can be, and operators are where they are bound. */
function checkCalls(line: Line): void {
  const { staff, calls, moves, work, stops, goods } = line
  const there = new Int32Array(line.stations)
  const sent = new Int32Array(line.stations)
  for (let operator = 0; operator < line.operators; operator++) {
    const task = staff.operatorTask[operator]!
    if (task === NONE || task >= line.stations) continue
    sent[task]!++
    if (staff.operatorWalks[operator] === 0) there[task]!++
  }
  let aside = 0
  for (let station = 0; station < line.stations; station++) {
    assert(sent[station] === calls.stationSent[station] && there[station] === calls.stationThere[station], 'operators are miscounted')
    assert(sent[station]! <= calls.stationNeeds[station]!, 'more operators are sent than are needed')
    const carrier = moves.zoneCarrier[work.stationZone[station]!]!
    if (carrier === NONE || moves.carrierPhase[carrier] !== WORK_PENDING) continue
    const isAside = calls.stationAside[station] === 1
    if (isAside && work.stationDuty[station] === LOAD_DUTY) aside++
    if (stops.stationHeld[station]! > 0) continue
    assert(isAside || !canSetAside(line, station), 'what could be set aside was forgotten')
    assert(!isPrepared(line, station), 'work that could start was forgotten')
    const lacks = calls.stationCalled[station] === 1 && sent[station]! < calls.stationNeeds[station]!
    assert(!lacks || stops.breaksNow > 0 || !hasFreeOperator(line, station), 'a station that calls was forgotten')
  }
  assert(aside === goods.productsAside, 'the products set aside are miscounted')
  for (const supply of goods.supplies) {
    assert(supply.always || supply.waiting + supply.aside === supply.queue.count, 'the products in a queue are miscounted')
    assert(supply.queue.count <= supply.limit, 'a queue holds more than it has places for')
  }
}

/** As far as is known zones and sections operate as long as what is under way in them: the same whether it is told as it begins or looked for. */
function checkOperation(line: Line): void {
  const { now, stops, sections } = line
  const is = (until: number): boolean => Math.max(until, now) === stops.knownEnd[0]
  for (let zone = 0; zone < line.zones; zone++) {
    findZoneEnd(line, zone)
    assert(is(stops.zoneUntil[zone]!), 'a zone operates longer than anything in it, or not as long')
  }
  for (let section = 0; section < sections.sectionUntil.length; section++) {
    findSectionEnd(line, section)
    assert(is(sections.sectionUntil[section]!), 'a section operates longer than all its zones, or not as long')
  }
}

/** Whether any stop is under way. */
function isStopped(line: Line): boolean {
  return line.stops.breaksNow > 0 || line.stops.sourceDown.includes(1) || line.safety.safetyActive.some((stops) => stops > 0)
}

/** A part is held as often as there are stops on it, and what is held has no timer running. */
function checkHolds(line: Line): void {
  const { stops, sections, safety, slots, graph } = line
  if (!isStopped(line)) {
    for (let zone = 0; zone < line.zones; zone++) assert(stops.zoneHeld[zone] === 0, 'a zone is not held as often as it is stopped')
    for (let path = 0; path < line.paths; path++)
      assert(stops.pathHeld[path] === 0, 'a path is held without a stop, or stopped and not held')
    for (let station = 0; station < line.stations; station++)
      assert(stops.stationHeld[station] === 0, 'a station is not held as often as it is stopped')
    return
  }
  const zones = new Int32Array(line.zones)
  const stations = new Int32Array(line.stations)
  line.spec.breakdowns.forEach(({ part }, source) => {
    if (stops.sourceDown[source] === 0) return
    if (part.kind === 'section')
      for (let zone = 0; zone < line.zones; zone++) zones[zone]! += sections.zoneSection[zone] === part.index ? 1 : 0
    else if (part.kind === 'station') stations[part.index]!++
    else zones[part.index]!++
  })
  safety.safetyStations.forEach((station, k) => {
    const section = sections.zoneSection[line.work.stationZone[station]!]
    for (let zone = 0; zone < line.zones; zone++) if (sections.zoneSection[zone] === section) zones[zone]! += safety.safetyActive[k]!
  })
  for (let zone = 0; zone < line.zones; zone++) {
    if (stops.breaksNow > 0 && !line.spec.conveyorDuringBreaks) zones[zone]!++
    assert(zones[zone] === stops.zoneHeld[zone], 'a zone is not held as often as it is stopped')
    if (stops.zoneHeld[zone]! > 0) assert(!line.queue.isPending(slots.changeSlot + zone), 'a held transfer changes')
  }
  for (let path = 0; path < line.paths; path++) {
    const from = graph.pathFrom[path]!
    const byHand = stops.breaksNow > 0 && graph.manualStation[path] !== NONE
    const isHeld = byHand || stops.zoneHeld[from]! > 0 || stops.zoneHeld[graph.pathTo[path]!]! > 0
    assert((stops.pathHeld[path] === 1) === isHeld, 'a path is held without a stop, or stopped and not held')
    if (!isHeld) continue
    const clears = line.moves.leavingPath[from] === path && line.queue.isPending(slots.clearSlot + from)
    assert(!line.queue.isPending(slots.arrivalSlot + path) && !clears, 'a held move runs')
  }
  for (let station = 0; station < line.stations; station++) {
    if (stops.breaksNow > 0 && stops.stationBreaks[station] === 1) stations[station]!++
    assert(stations[station] === stops.stationHeld[station], 'a station is not held as often as it is stopped')
    if (stations[station]! > 0) assert(!line.queue.isPending(slots.workSlot + station), 'held work runs')
  }
}
