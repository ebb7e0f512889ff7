/** Standing still for ever: judged as if no stop were there. (MODEL.md §10) */
import { timeClear } from './clear.ts'
import { pathThatStarts } from './move.ts'
import type { RunEnd } from './result.ts'
import {
  BACK_PENDING,
  CHANGE_PENDING,
  CLEAR_KNOWN,
  DONE,
  type Line,
  LOAD_DUTY,
  NONE,
  RELEASE_PENDING,
  TO_WAY_OUT_PENDING,
  WORK_PENDING,
} from './state.ts'
import { hasProduct } from './supply.ts'
import { wayNow, wayOf } from './wayOut.ts'

/** Whether nothing is under way and nothing could start, also without any stop. */
export function standsStill(line: Line): boolean {
  if (line.activity > 0) return false
  for (let zone = 0; zone < line.zones; zone++) {
    if (line.zoneClearing[zone] === CLEAR_KNOWN && line.clearAt[zone]! > line.now) timeClear(line, zone)
  }
  if (line.activity > 0) return false
  for (let zone = 0; zone < line.zones; zone++) {
    const change = line.zoneChange[zone]
    if (change === BACK_PENDING || change === TO_WAY_OUT_PENDING) return false
  }
  for (let carrier = 0; carrier < line.carriers; carrier++) {
    const zone = line.carrierZone[carrier]!
    const phase = line.carrierPhase[carrier]!
    if (phase === DONE && line.zoneCarrier[zone] === carrier && pathThatStarts(line, zone, true) !== NONE) return false
    if (phase === RELEASE_PENDING || phase === CHANGE_PENDING) return false
    if (phase === WORK_PENDING && (line.stationDuty[line.zoneStation[zone]!] !== LOAD_DUTY || hasProduct(line))) return false
  }
  return true
}

/** Why it stands still: who waits for whom, and the first cycle met from the lowest zone. */
export function standstill(line: Line): RunEnd {
  const waitsFor = new Int32Array(line.zones).fill(NONE)
  const waits: [number, number][] = []
  let outOfProducts = false
  for (let zone = 0; zone < line.zones; zone++) {
    const carrier = line.zoneCarrier[zone]!
    if (carrier === NONE) continue
    if (line.carrierPhase[carrier] === WORK_PENDING) {
      outOfProducts = true
      continue
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
  }
}

/** The zone that the carrier waits for, behind exit-clear transfers the zone after them; NONE: it has no way out, or only the store behind it. */
function zoneWaitedFor(line: Line, zone: number, carrier: number): number {
  const way = wayNow(line, zone, carrier)
  if (way === NONE || line.pathTo[way] === line.store) return NONE
  let ahead = line.pathTo[way]!
  for (let steps = 0; steps < line.zones && line.exitClear[ahead] === 1; steps++) {
    const next = wayOf(line, ahead, carrier)
    if (next === NONE || line.pathTo[next] === line.store) break
    ahead = line.pathTo[next]!
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
