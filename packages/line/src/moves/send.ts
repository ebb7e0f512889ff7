/** Sending operators: to the station, or the push or pull, that has called longest. (MODEL.md §5, §6) */
import { pathThatStarts } from './move.ts'
import { arrive, hasFreeOperator, nearestFree, waitsForHands, walkTo } from '../operators/operators.ts'
import type { Line } from '../state/line.ts'
import { NONE, takeAt } from '../state/lists.ts'
import { startTimer } from '../state/timer.ts'
import { OPERATOR_SENT } from '../telling/trace.ts'
import { mustTurnIn, startTurnIn } from './transfer.ts'
import { claim } from './zone.ts'

/** Whether anybody may have to be sent: somebody was freed or called, or waits to be pushed. */
export const maySend = (line: Line): boolean => line.calls.sendDue || waitsForHands(line)

/** Sends one operator: to what has called longest; at equal times stations first, then the lower index. False: nobody can be sent. */
export function sendFirst(line: Line): boolean {
  const { stops, staff, calls, graph, moves } = line
  if (stops.breaksNow > 0) return false
  if (staff.operatorsFree === 0) {
    calls.sendDue = false
    return false
  }
  let station = NONE
  let stationPlace = NONE
  let path = NONE
  let since = 0
  if (calls.sendDue) {
    const { callList } = calls
    for (let place = 0; place < callList.length; place++) {
      const s = callList.items[place]!
      if (stops.stationHeld[s]! > 0) continue
      const called = calls.calledAt[s]!
      if (station !== NONE && (called > since || (called === since && s > station))) continue
      if (!hasFreeOperator(line, s)) continue
      station = s
      stationPlace = place
      since = called
    }
  }
  for (let k = 0; k < staff.manualFrom.length; k++) {
    const way = pathThatStarts(line, staff.manualFrom[k]!, false)
    if (way === NONE || graph.manualStation[way] === NONE || staff.pathOperator[way] !== NONE) continue
    const waits = moves.carrierSince[moves.zoneCarrier[staff.manualFrom[k]!]!]!
    const isFirst = station === NONE && path === NONE
    if (!isFirst && (waits > since || (waits === since && (path === NONE || way > path)))) continue
    if (!hasFreeOperator(line, graph.manualStation[way]!)) continue
    station = NONE
    path = way
    since = waits
  }
  if (path !== NONE) {
    sendToPath(line, path)
    return true
  }
  if (station !== NONE) {
    send(line, nearestFree(line, station), station, station)
    if (calls.stationSent[station] === calls.stationNeeds[station]) takeAt(calls.callList, stationPlace)
    return true
  }
  calls.sendDue = false
  return false
}

/** The next zone is claimed when the operator sets off; a transfer that stands otherwise turns meanwhile. */
function sendToPath(line: Line, path: number): void {
  const { graph, moves } = line
  const from = graph.pathFrom[path]!
  const operator = nearestFree(line, graph.manualStation[path]!)
  if (mustTurnIn(line, path)) startTurnIn(line, path)
  else claim(line, graph.pathTo[path]!, moves.zoneCarrier[from]!)
  moves.zoneWay[from] = path
  line.staff.pathOperator[path] = operator
  send(line, operator, line.stations + path, graph.manualStation[path]!)
}

/** @param task  the station, or the number of stations plus the path */
function send(line: Line, operator: number, task: number, station: number): void {
  const { staff, slots } = line
  const walk = staff.walkSeconds[walkTo(line, operator, station)]!
  staff.operatorsFree--
  staff.operatorTask[operator] = task
  staff.operatorPlace[operator] = station
  if (task < line.stations) line.calls.stationSent[station]!++
  line.collector.touch(line.work.stationZone[station]!)
  if (line.trace !== null) line.trace.add(line.now, OPERATOR_SENT, station, NONE, operator)
  if (walk === 0) {
    arrive(line, operator)
    return
  }
  line.activity++
  staff.operatorWalks[operator] = 1
  line.queue.times[slots.operatorSlot + operator] = line.now + walk
  startTimer(line, slots.operatorSlot + operator)
}
