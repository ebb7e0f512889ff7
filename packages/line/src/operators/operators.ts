/** Operators: who covers what, the ends of walks, pushes and pulls, and being free again. A station's own operators are kept here only where they push or pull as well. (MODEL.md §5, §6) */

import { toGrid } from '@loopwright/kernel'
import { wake } from '../moves/moveHeap.ts'
import type { LineSpec } from '../spec.ts'
import type { Line } from '../state/line.ts'
import { NONE, type PartList } from '../state/lists.ts'
import { addInOrder } from '../state/lowestFirst.ts'
import type { Staff } from '../state/staff.ts'
import { holdTimer, resumeTimer, startTimer } from '../state/timer.ts'
import { OPERATOR_FREE, OPERATOR_THERE } from '../telling/trace.ts'

/** Named operators first, then those of stations that have their own and push or pull. */
export function buildOperators(spec: LineSpec): Staff {
  const stations = spec.stations.length
  const manualStation = Int32Array.from(spec.paths, ({ manual }) => manual?.station ?? NONE)
  const covered = new Set(spec.operators.flatMap((operator) => operator.stations))
  const own = [...new Set(manualStation)].filter((station) => station !== NONE && !covered.has(station)).sort((a, b) => a - b)
  const ownOperators = own.flatMap((station) =>
    Array.from({ length: Math.max(1, spec.stations[station]!.operatorsNeeded) }, () => ({ stations: [station], start: station })),
  )
  const all = [...spec.operators, ...ownOperators]
  const lists: number[][] = Array.from({ length: stations }, () => [])
  all.forEach((operator, o) => {
    for (const station of new Set(operator.stations)) lists[station]!.push(o)
  })
  const first = new Int32Array(stations + 1)
  lists.forEach((list, station) => {
    first[station + 1] = first[station]! + list.length
  })
  const coverage: PartList = { first, items: Int32Array.from(lists.flat()) }
  const walkSeconds = new Float64Array(all.length === 0 ? 0 : stations * stations)
  for (const { between, seconds } of all.length === 0 ? [] : spec.walks) {
    const [a, b] = between
    walkSeconds[a * stations + b] = toGrid(seconds)
    walkSeconds[b * stations + a] = toGrid(seconds)
  }
  return {
    operatorStart: Int32Array.from(all, ({ start }) => start),
    coverage,
    walkSeconds,
    manualFrom: Int32Array.from(
      new Set(spec.paths.flatMap(({ from, manual }) => (manual === null ? [] : [from < 0 ? spec.zones.length : from]))),
    ),
    operatorTask: new Int32Array(all.length),
    operatorsFree: all.length,
    operatorPlace: new Int32Array(all.length),
    operatorWalks: new Uint8Array(all.length),
    handlingCount: new Int32Array(all.length),
    handlingSeconds: new Float64Array(all.length),
    pathOperator: new Int32Array(spec.paths.length),
    carrierOperator: new Int32Array(spec.carriers.count),
    handlingSince: new Float64Array(spec.carriers.count),
    stationHandling: new Int32Array(stations),
  }
}

export function resetOperators(line: Line): void {
  const { staff } = line
  staff.operatorTask.fill(NONE)
  staff.operatorsFree = line.operators
  staff.operatorPlace.set(staff.operatorStart)
  staff.operatorWalks.fill(0)
  staff.pathOperator.fill(NONE)
  for (const column of [staff.stationHandling, staff.carrierOperator, staff.handlingSince]) column.fill(0)
  line.calls.sendDue = true
  restartHandling(line)
}

/** The warm-up is over: what was counted is forgotten. */
export function restartHandling(line: Line): void {
  const { staff } = line
  staff.handlingCount.fill(0)
  staff.handlingSeconds.fill(0)
}

/** Place in `walkSeconds` of the operator's walk to the station from where he stands. */
export function walkTo({ staff, stations }: Line, operator: number, station: number): number {
  return staff.operatorPlace[operator]! * stations + station
}

/** The operator, who is free and stands at the station, works there from now on. */
export function takeWhereHeStands({ staff, calls }: Line, operator: number, station: number): void {
  staff.operatorsFree--
  staff.operatorTask[operator] = station
  staff.operatorPlace[operator] = station
  calls.stationSent[station]!++
  calls.stationThere[station]!++
}

/** The operator, who is free, sets off to the station. */
export function sendWalking(line: Line, operator: number, station: number): void {
  const { staff, slots } = line
  const slot = slots.operatorSlot + operator
  line.queue.times[slot] = line.now + staff.walkSeconds[walkTo(line, operator, station)]!
  staff.operatorsFree--
  staff.operatorTask[operator] = station
  staff.operatorPlace[operator] = station
  staff.operatorWalks[operator] = 1
  line.calls.stationSent[station]!++
  line.activity++
  startTimer(line, slot)
}

/** Whether somebody stands before a push or pull, so that an operator may be sent to it. */
export function waitsForHands({ staff: { manualFrom }, moves: { zoneCarrier } }: Line): boolean {
  for (let k = 0; k < manualFrom.length; k++) if (zoneCarrier[manualFrom[k]!] !== NONE) return true
  return false
}

/** The nearest free operator who covers the station: least walk, then lower index; NONE: there is none. */
export function nearestFree(line: Line, station: number): number {
  const { staff } = line
  const { first, items } = staff.coverage
  let best = NONE
  let bestWalk = 0
  for (let k = first[station]!; k < first[station + 1]!; k++) {
    const operator = items[k]!
    if (staff.operatorTask[operator] !== NONE) continue
    const walk = staff.walkSeconds[walkTo(line, operator, station)]!
    if (best !== NONE && walk >= bestWalk) continue
    best = operator
    bestWalk = walk
  }
  return best
}

/** Whether somebody is free who covers the station. */
export function hasFreeOperator(line: Line, station: number): boolean {
  return nearestFree(line, station) !== NONE
}

/** Whether the move by hand along the path can start as far as its operator goes: he is there. */
export function isManned(line: Line, path: number): boolean {
  const { staff } = line
  const operator = staff.pathOperator[path]!
  return operator !== NONE && staff.operatorWalks[operator] === 0
}

/** The walk is over. */
export function onWalkEnd(line: Line, operator: number): void {
  line.activity--
  line.staff.operatorWalks[operator] = 0
  arrive(line, operator)
}

/** The operator is where it is wanted. */
export function arrive(line: Line, operator: number): void {
  const { staff } = line
  const task = staff.operatorTask[operator]!
  const station = staff.operatorPlace[operator]!
  if (line.trace !== null) line.trace.add(line.now, OPERATOR_THERE, station, NONE, operator)
  if (task >= line.stations) {
    wake(line, line.graph.pathFrom[task - line.stations]!)
    return
  }
  line.calls.stationThere[station]!++
  addInOrder(line.work.workList, station)
}

/** The stay is over: its operators are free, and stay where they are. */
export function freeStation(line: Line, station: number): void {
  const { calls, staff } = line
  calls.stationCalled[station] = 0
  if (calls.stationNeeds[station] === 0) return
  const { first, items } = staff.coverage
  for (let k = first[station]!; k < first[station + 1]!; k++) if (staff.operatorTask[items[k]!] === station) free(line, items[k]!)
  calls.stationSent[station] = 0
  calls.stationThere[station] = 0
}

function free(line: Line, operator: number): void {
  const { staff } = line
  staff.operatorsFree++
  staff.operatorTask[operator] = NONE
  line.calls.sendDue = true
  if (line.trace !== null) line.trace.add(line.now, OPERATOR_FREE, staff.operatorPlace[operator]!, NONE, operator)
}

/** A push or pull begins. */
export function beginHandling(line: Line, path: number, carrier: number): void {
  const { staff } = line
  const station = line.graph.manualStation[path]!
  staff.stationHandling[station]!++
  staff.carrierOperator[carrier] = staff.pathOperator[path]!
  staff.pathOperator[path] = NONE
  staff.handlingSince[carrier] = line.now
  line.collector.touch(line.work.stationZone[station]!)
}

/** The carrier has arrived: it is counted, and the operator is free. */
export function endHandling(line: Line, path: number, carrier: number): void {
  const { staff } = line
  const station = line.graph.manualStation[path]!
  const operator = staff.carrierOperator[carrier]!
  staff.stationHandling[station]!--
  staff.handlingCount[operator]!++
  staff.handlingSeconds[operator]! += line.now - staff.handlingSince[carrier]!
  line.collector.touch(line.work.stationZone[station]!)
  free(line, operator)
}

/** A break begins: walks stand still. */
export function holdWalks(line: Line): void {
  for (let operator = 0; operator < line.operators; operator++) holdTimer(line, line.slots.operatorSlot + operator)
}

/** The break is over: walks go on, and operators can be sent again. */
export function resumeWalks(line: Line): void {
  for (let operator = 0; operator < line.operators; operator++) resumeTimer(line, line.slots.operatorSlot + operator)
  line.calls.sendDue = true
}
