/** What holds after every instant, whatever the line; checked in verify mode. Each rule has its reason. */
import { assert, isOnGrid } from '@loopwright/kernel'
import {
  BACK,
  BRAKING,
  CHANGING,
  CLAIMED,
  CLEAR_NOW,
  CLEAR_TIMED,
  FREE,
  type Line,
  LOOKING,
  MOVING,
  NONE,
  OCCUPIED,
  RELEASING,
  TO_WAY_OUT,
  VACATING,
  WORKING,
} from './state.ts'

export function checkInvariants(line: Line): void {
  assert(isOnGrid(line.now), 'an instant lies off the clock grid')
  assert(line.lookList.length === 0, 'a carrier still looks at the end of an instant')
  checkPlaces(line)
  checkZones(line)
  checkTimers(line)
  checkHolds(line)
}

/** Each carrier is in exactly one zone, so that occupancies sum to N. */
function checkPlaces(line: Line): void {
  let held = 0
  for (let zone = 0; zone < line.zones; zone++) if (line.zoneCarrier[zone] !== NONE) held++
  assert(held === line.carriers, 'the zones do not hold as many carriers as there are')
  for (let carrier = 0; carrier < line.carriers; carrier++) {
    assert(line.zoneCarrier[line.carrierZone[carrier]!] === carrier, 'a carrier is not in the zone it is in')
    assert(line.carrierPhase[carrier] !== LOOKING, 'a carrier looks at the end of an instant')
    assert(line.carrierSerial[carrier]! < line.nextSerial, 'a product was never loaded')
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
        assert(line.pathClearing[zone] !== CLEAR_NOW || line.zoneChange[zone] !== 0, 'a zone is vacating with nobody on the way out')
    }
  }
}

/** The timers under way are exactly those that the state implies: none is forgotten, none left over. */
function checkTimers(line: Line): void {
  let activity = 0
  const expect = (slot: number, wanted: boolean): void => {
    assert((line.queue.isPending(slot) || line.isHeldBack[slot] === 1) === wanted, 'a timer is missing or left over')
    assert(!(line.queue.isPending(slot) && line.isHeldBack[slot] === 1), 'a timer runs and is held')
    assert(!line.queue.isPending(slot) || line.queue.times[slot]! > line.now, 'a timer is left behind')
    if (wanted) activity++
  }
  for (let path = 0; path < line.zones; path++) {
    const carrier = line.pathCarrier[path]!
    assert(
      carrier === NONE || line.carrierZone[carrier] === line.zoneNext[path],
      'a carrier is under way to another zone than it counts in',
    )
    expect(line.arrivalSlot + path, carrier !== NONE)
    expect(line.clearSlot + path, line.pathClearing[path] === CLEAR_TIMED)
    const change = line.zoneChange[path]
    expect(line.changeSlot + path, change === TO_WAY_OUT || change === BACK)
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
  assert(activity === line.activity, 'the count of what is under way is wrong')
}

/** A part is held as often as there are stops on it, and what is held has no timer running. */
function checkHolds(line: Line): void {
  const zones = new Int32Array(line.zones)
  const stations = new Int32Array(line.stations)
  line.spec.breakdowns.forEach(({ part }, source) => {
    if (line.sourceDown[source] === 0) return
    if (part.kind === 'section') for (let zone = 0; zone < line.zones; zone++) zones[zone]!++
    else if (part.kind === 'station') stations[part.index]!++
    else zones[part.index]!++
  })
  for (let zone = 0; zone < line.zones; zone++) {
    if (line.breaksNow > 0 && !line.spec.conveyorDuringBreaks) zones[zone]!++
    assert(zones[zone] === line.zoneHeld[zone], 'a zone is not held as often as it is stopped')
    const next = line.zoneNext[zone]!
    const isHeld = line.zoneHeld[zone]! > 0 || line.zoneHeld[next]! > 0
    assert((line.pathHeld[zone] === 1) === isHeld, 'a path is held without a stop, or stopped and not held')
    if (isHeld) assert(!line.queue.isPending(line.arrivalSlot + zone) && !line.queue.isPending(line.clearSlot + zone), 'a held move runs')
    if (line.zoneHeld[zone]! > 0) assert(!line.queue.isPending(line.changeSlot + zone), 'a held transfer changes')
  }
  for (let station = 0; station < line.stations; station++) {
    if (line.breaksNow > 0 && line.stationBreaks[station] === 1) stations[station]!++
    assert(stations[station] === line.stationHeld[station], 'a station is not held as often as it is stopped')
    if (stations[station]! > 0) assert(!line.queue.isPending(line.workSlot + station), 'held work runs')
  }
}
