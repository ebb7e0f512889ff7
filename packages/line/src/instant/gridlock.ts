/** Standing still for ever: judged as if no stop were there. (MODEL.md §10) */
import { hasProductFor, isToCome } from '../goods/arrivals.ts'
import { isPrepared } from '../work/calls.ts'
import { timeClear } from '../moves/clear.ts'
import { drivenPathThatStarts, pathThatStarts } from '../moves/move.ts'
import { hasFreeOperator } from '../operators/operators.ts'
import type { RunEnd } from '../telling/result.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { CHANGE_PENDING, CLEAR_KNOWN, DONE, RELEASE_PENDING, WORK_PENDING } from '../state/moves.ts'
import { BACK_PENDING, TO_WAY_OUT_PENDING } from '../state/transfers.ts'
import { LOAD_DUTY } from '../state/work.ts'
import { hasProduct } from '../goods/supply.ts'
import { wayNow, wayOf } from '../moves/wayOut.ts'

/** Whether nothing is under way and nothing could start, also without any stop. */
export function standsStill(line: Line): boolean {
  const { moves } = line
  if (line.activity > 0) return false
  for (let zone = 0; zone < line.zones; zone++) {
    if (moves.zoneClearing[zone] === CLEAR_KNOWN && line.queue.times[line.slots.clearSlot + zone]! > line.now) timeClear(line, zone)
  }
  if (line.activity > 0) return false
  for (let zone = 0; zone < line.zones; zone++) {
    const change = line.transfers.zoneChange[zone]
    if (change === BACK_PENDING || change === TO_WAY_OUT_PENDING) return false
  }
  for (let carrier = 0; carrier < line.carriers; carrier++) {
    const zone = moves.carrierZone[carrier]!
    const phase = moves.carrierPhase[carrier]!
    if (phase === DONE && moves.zoneCarrier[zone] === carrier) {
      const way = pathThatStarts(line, zone, true)
      if (way !== NONE && (canBeManned(line, way) || drivenPathThatStarts(line, zone, true) !== NONE)) return false
    }
    if (phase === RELEASE_PENDING || phase === CHANGE_PENDING) return false
    if (phase === WORK_PENDING && mayWork(line, line.work.zoneStation[zone]!)) return false
  }
  return true
}

/** Whether somebody can move the carrier along the path: the drive, or an operator who is sent or free. */
function canBeManned(line: Line, path: number): boolean {
  const station = line.graph.manualStation[path]!
  return station === NONE || line.staff.pathOperator[path] !== NONE || hasFreeOperator(line, station)
}

/** Whether the duty that is next could start sometime: what it needs is there or to come, and operators are there or free. */
function mayWork(line: Line, station: number): boolean {
  const isLoad = line.work.stationDuty[station] === LOAD_DUTY
  if (!line.hasCalls) return !isLoad || hasProduct(line)
  if (line.calls.stationAside[station] === 0) {
    // a receiver that has no place works, and makes one
    return !isLoad || hasProductFor(line, station) || isToCome(line, station)
  }
  return isPrepared(line, station) || hasFreeOperator(line, station)
}

/** Why it stands still: who waits for whom, and the first cycle met from the lowest zone. */
export function standstill(line: Line): RunEnd {
  const { moves } = line
  const waitsFor = new Int32Array(line.zones).fill(NONE)
  const waits: [number, number][] = []
  const unmanned: number[] = []
  let outOfProducts = false
  for (let zone = 0; zone < line.zones; zone++) {
    const carrier = moves.zoneCarrier[zone]!
    if (carrier === NONE) continue
    if (moves.carrierPhase[carrier] === WORK_PENDING) {
      const station = line.work.zoneStation[zone]!
      if (line.hasCalls && line.calls.stationAside[station] === 1) unmanned.push(zone)
      else outOfProducts = true
      continue
    }
    if (moves.carrierPhase[carrier] === DONE) {
      const way = pathThatStarts(line, zone, true)
      if (way !== NONE && !canBeManned(line, way)) {
        unmanned.push(zone)
        continue
      }
    }
    const ahead = zoneWaitedFor(line, zone, carrier)
    if (ahead === NONE) continue
    waitsFor[zone] = ahead
    waits.push([zone, ahead])
  }
  return {
    reason: outOfProducts ? 'out of products' : 'gridlock',
    atSeconds: line.now,
    waits,
    cycle: firstCycle(waitsFor),
    unmanned,
  }
}

/** The zone that the carrier waits for, behind exit-clear transfers the zone after them; NONE: it has no way out, or only the store behind it. */
function zoneWaitedFor(line: Line, zone: number, carrier: number): number {
  const { graph } = line
  const way = wayNow(line, zone, carrier)
  if (way === NONE || graph.pathTo[way] === line.store) return NONE
  let ahead = graph.pathTo[way]!
  for (let steps = 0; steps < line.zones && graph.exitClear[ahead] === 1; steps++) {
    const next = wayOf(line, ahead, carrier)
    if (next === NONE || graph.pathTo[next] === line.store) break
    ahead = graph.pathTo[next]!
  }
  return ahead
}

function firstCycle(waitsFor: Int32Array): number[] {
  const seenFrom = new Int32Array(waitsFor.length).fill(NONE)
  for (let start = 0; start < waitsFor.length; start++) {
    let zone = start
    while (zone !== NONE && seenFrom[zone] === NONE) {
      seenFrom[zone] = start
      zone = waitsFor[zone]!
    }
    if (zone === NONE || seenFrom[zone] !== start) continue
    const cycle = [zone]
    for (let next = waitsFor[zone]!; next !== zone; next = waitsFor[next]!) cycle.push(next)
    return cycle
  }
  return []
}
