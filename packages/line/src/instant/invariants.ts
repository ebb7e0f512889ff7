/** What holds after every instant, whatever the line; checked in verify mode. Each rule has its reason. */
import { assert, isOnGrid } from '@loopwright/kernel'
import { canSetAside, isPrepared } from '../work/calls.ts'
import { drivenPathThatStarts, pathThatStarts } from '../moves/move.ts'
import { hasFreeOperator, isManned } from '../operators/operators.ts'
import {
  BACK,
  BACK_PENDING,
  BRAKING,
  CHANGING,
  CLAIMED,
  CLEAR_NOW,
  CLEAR_TIMED,
  DONE,
  FREE,
  type Line,
  LOAD_DUTY,
  LOOKING,
  MOVING,
  NONE,
  OCCUPIED,
  RELEASING,
  TO_WAY_IN,
  TO_WAY_OUT,
  TO_WAY_OUT_PENDING,
  VACATING,
  WORK_PENDING,
  WORKING,
} from './state.ts'

export function checkInvariants(line: Line): void {
  assert(isOnGrid(line.now), 'an instant lies off the clock grid')
  assert(line.lookList.length === 0, 'a carrier still looks at the end of an instant')
  checkPlaces(line)
  checkZones(line)
  checkTimers(line)
  if (line.sources + line.breakTimes.length + line.safety.safetyStations.length > 0) checkHolds(line)
  if (!line.isLoop) checkStarts(line)
  if (line.hasCalls) checkCalls(line)
}

/** Each carrier is in exactly one zone, so that occupancies sum to N. */
function checkPlaces(line: Line): void {
  let held = line.storeCount
  for (let zone = 0; zone < line.zones; zone++) if (line.zoneCarrier[zone] !== NONE) held++
  for (let carrier = 0; carrier < line.carriers; carrier++) {
    const zone = line.carrierZone[carrier]!
    if (zone !== line.store) assert(line.zoneCarrier[zone] === carrier, 'a carrier is not in the zone it is in')
    else if (line.carrierPhase[carrier] === MOVING) held++
    else assert(line.carrierPhase[carrier] === DONE, 'a carrier in the store is not done')
    assert(line.carrierPhase[carrier] !== LOOKING, 'a carrier looks at the end of an instant')
    assert(line.carrierSerial[carrier]! < line.nextSerial, 'a product was never loaded')
  }
  assert(held === line.carriers, 'the zones do not hold as many carriers as there are')
  checkStore(line)
}

/** The store is always free, and its carriers stand in the order in which they came. */
function checkStore(line: Line): void {
  const { store } = line
  const item = (k: number): number => line.storeItems[(line.storeFirst + k) % line.carriers]!
  assert(line.zoneState[store] === FREE && line.zoneHeld[store] === 0 && line.zoneClaimant[store] === NONE, 'the store is not free')
  assert(line.zoneCarrier[store] === (line.storeCount === 0 ? NONE : item(0)), 'the first in the store is not the one that may leave')
  for (let k = 0; k < line.storeCount; k++) {
    assert(line.carrierZone[item(k)] === store, 'a carrier stands in the store that is elsewhere')
    if (k > 0) assert(line.carrierSince[item(k - 1)]! <= line.carrierSince[item(k)]!, 'carriers in the store stand in the wrong order')
  }
}

/** A zone's state says whether a carrier is in it and what it does. */
function checkZones(line: Line): void {
  for (let zone = 0; zone < line.zones; zone++) {
    const carrier = line.zoneCarrier[zone]!
    const claimant = line.zoneClaimant[zone]!
    const phase = carrier === NONE ? NONE : line.carrierPhase[carrier]!
    const moves = phase === MOVING || phase === BRAKING
    switch (line.zoneState[zone]) {
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
        assert(line.zoneState[zone] === VACATING && carrier === NONE && claimant === NONE, 'a vacating zone holds or expects a carrier')
        assert(line.zoneClearing[zone] !== CLEAR_NOW || line.zoneChange[zone] !== 0, 'a zone is vacating with nobody on the way out')
    }
  }
}

/** The timers under way are exactly those that the state implies: none is forgotten, none left over. */
function checkTimers(line: Line): void {
  let activity = 0
  const expect = (slot: number, wanted: boolean): void => {
    const runs = line.queue.isPending(slot)
    const isHeld = line.isHeldBack[slot] === 1
    assert((runs || isHeld) === wanted, 'a timer is missing or left over')
    if (!wanted) return
    assert(!(runs && isHeld), 'a timer runs and is held')
    assert(!runs || line.queue.times[slot]! > line.now, 'a timer is left behind')
    activity++
  }
  for (let path = 0; path < line.paths; path++) {
    const carrier = line.pathCarrier[path]!
    assert(carrier === NONE || line.carrierZone[carrier] === line.pathTo[path], 'a carrier is under way to another zone than it counts in')
    assert(carrier === NONE || line.carrierPath[carrier] === path, 'a carrier is under way on another path than it came by')
    expect(line.arrivalSlot + path, carrier !== NONE)
  }
  for (let zone = 0; zone < line.zones; zone++) {
    expect(line.clearSlot + zone, line.zoneClearing[zone] === CLEAR_TIMED)
    const change = line.zoneChange[zone]
    expect(line.changeSlot + zone, change === TO_WAY_OUT || change === BACK || change === TO_WAY_IN)
    if (change === TO_WAY_IN) {
      assert(line.zoneState[zone] === CLAIMED && line.zoneCarrier[zone] === NONE, 'a transfer turns to a way in while it is in use')
      assert(line.carrierPhase[line.zoneClaimant[zone]!] === DONE, 'a transfer turns for a carrier that is not at rest')
    }
  }
  if (line.operatorSlot > line.storeSlot) {
    for (let carrier = 0; carrier < line.carriers; carrier++) {
      expect(line.storeSlot + carrier, line.carrierZone[carrier] === line.store && line.carrierPhase[carrier] === MOVING)
    }
  }
  for (let station = 0; station < line.stations; station++) {
    const carrier = line.zoneCarrier[line.stationZone[station]!]!
    const phase = carrier === NONE ? NONE : line.carrierPhase[carrier]!
    expect(line.workSlot + station, phase === WORKING || phase === RELEASING)
  }
  for (let carrier = 0; carrier < line.carriers; carrier++) {
    if (line.carrierPhase[carrier] === CHANGING)
      assert(line.zoneChange[line.carrierZone[carrier]!] === TO_WAY_OUT, 'nothing changes under a carrier')
  }
  for (let operator = 0; operator < line.operators; operator++)
    expect(line.operatorSlot + operator, line.staff.operatorWalks[operator] === 1)
  assert(activity === line.activity, 'the count of what is under way is wrong')
}

/** Nothing is left that could start: whoever may try has been told to. On a plain loop asking would give timers to clears that have none. */
function checkStarts(line: Line): void {
  for (let place = 0; place <= line.zones; place++) {
    const way = pathThatStarts(line, place, false)
    const waits =
      way === NONE ||
      (line.manualStation[way] !== NONE &&
        (line.breaksNow > 0 || !isManned(line, way)) &&
        drivenPathThatStarts(line, place, false) === NONE)
    assert(waits, 'a move that could start was forgotten')
    const change = line.zoneChange[place]
    assert(
      (change !== TO_WAY_OUT_PENDING && change !== BACK_PENDING) || line.zoneHeld[place]! > 0,
      'a change that could start was forgotten',
    )
  }
}

/** Whoever calls is served as soon as can be, and operators are where they are bound. */
function checkCalls(line: Line): void {
  const there = new Int32Array(line.stations)
  const sent = new Int32Array(line.stations)
  for (let operator = 0; operator < line.operators; operator++) {
    const task = line.staff.operatorTask[operator]!
    if (task === NONE || task >= line.stations) continue
    sent[task]!++
    if (line.staff.operatorWalks[operator] === 0) there[task]!++
  }
  let aside = 0
  for (let station = 0; station < line.stations; station++) {
    assert(
      sent[station] === line.calls.stationSent[station] && there[station] === line.calls.stationThere[station],
      'operators are miscounted',
    )
    assert(sent[station]! <= line.calls.stationNeeds[station]!, 'more operators are sent than are needed')
    const carrier = line.zoneCarrier[line.stationZone[station]!]!
    if (carrier === NONE || line.carrierPhase[carrier] !== WORK_PENDING) continue
    const isAside = line.calls.stationAside[station] === 1
    if (isAside && line.stationDuty[station] === LOAD_DUTY) aside++
    if (line.stationHeld[station]! > 0) continue
    assert(isAside || !canSetAside(line, station), 'what could be set aside was forgotten')
    assert(!isPrepared(line, station), 'work that could start was forgotten')
    const lacks = line.calls.stationCalled[station] === 1 && sent[station]! < line.calls.stationNeeds[station]!
    assert(!lacks || line.breaksNow > 0 || !hasFreeOperator(line, station), 'a station that calls was forgotten')
  }
  assert(aside === line.goods.productsAside, 'the products set aside are miscounted')
  for (const supply of line.goods.supplies) {
    assert(supply.always || supply.waiting + supply.aside === supply.queue.count, 'the products in a queue are miscounted')
    assert(supply.queue.count <= supply.limit, 'a queue holds more than it has places for')
  }
}

/** Whether any stop is under way. */
function isStopped(line: Line): boolean {
  return line.breaksNow > 0 || line.sourceDown.includes(1) || line.safety.safetyActive.some((stops) => stops > 0)
}

/** A part is held as often as there are stops on it, and what is held has no timer running. */
function checkHolds(line: Line): void {
  if (!isStopped(line)) {
    for (let zone = 0; zone < line.zones; zone++) assert(line.zoneHeld[zone] === 0, 'a zone is not held as often as it is stopped')
    for (let path = 0; path < line.paths; path++)
      assert(line.pathHeld[path] === 0, 'a path is held without a stop, or stopped and not held')
    for (let station = 0; station < line.stations; station++)
      assert(line.stationHeld[station] === 0, 'a station is not held as often as it is stopped')
    return
  }
  const zones = new Int32Array(line.zones)
  const stations = new Int32Array(line.stations)
  line.spec.breakdowns.forEach(({ part }, source) => {
    if (line.sourceDown[source] === 0) return
    if (part.kind === 'section')
      for (let zone = 0; zone < line.zones; zone++) zones[zone]! += line.sections.zoneSection[zone] === part.index ? 1 : 0
    else if (part.kind === 'station') stations[part.index]!++
    else zones[part.index]!++
  })
  line.safety.safetyStations.forEach((station, k) => {
    const section = line.sections.zoneSection[line.stationZone[station]!]
    for (let zone = 0; zone < line.zones; zone++)
      if (line.sections.zoneSection[zone] === section) zones[zone]! += line.safety.safetyActive[k]!
  })
  for (let zone = 0; zone < line.zones; zone++) {
    if (line.breaksNow > 0 && !line.spec.conveyorDuringBreaks) zones[zone]!++
    assert(zones[zone] === line.zoneHeld[zone], 'a zone is not held as often as it is stopped')
    if (line.zoneHeld[zone]! > 0) assert(!line.queue.isPending(line.changeSlot + zone), 'a held transfer changes')
  }
  for (let path = 0; path < line.paths; path++) {
    const from = line.pathFrom[path]!
    const byHand = line.breaksNow > 0 && line.manualStation[path] !== NONE
    const isHeld = byHand || line.zoneHeld[from]! > 0 || line.zoneHeld[line.pathTo[path]!]! > 0
    assert((line.pathHeld[path] === 1) === isHeld, 'a path is held without a stop, or stopped and not held')
    if (!isHeld) continue
    const clears = line.leavingPath[from] === path && line.queue.isPending(line.clearSlot + from)
    assert(!line.queue.isPending(line.arrivalSlot + path) && !clears, 'a held move runs')
  }
  for (let station = 0; station < line.stations; station++) {
    if (line.breaksNow > 0 && line.stationBreaks[station] === 1) stations[station]!++
    assert(stations[station] === line.stationHeld[station], 'a station is not held as often as it is stopped')
    if (stations[station]! > 0) assert(!line.queue.isPending(line.workSlot + station), 'held work runs')
  }
}
