/** Sending operators: to the station, or the push or pull, that has called longest. (MODEL.md §5, §6) */
import { pathThatStarts } from './move.ts'
import { arrive, hasFreeOperator, nearestFree } from '../operators/operators.ts'
import { type Line, NONE, takeAt } from '../instant/state.ts'
import { startTimer } from '../build/timer.ts'
import { OPERATOR_SENT } from '../telling/trace.ts'
import { mustTurnIn, startTurnIn } from './transfer.ts'
import { claim } from './zone.ts'

/** Sends one operator: to what has called longest; at equal times stations first, then the lower index. False: nobody can be sent. */
export function sendFirst(line: Line): boolean {
  if (line.breaksNow > 0) return false
  if (line.staff.operatorsFree === 0) {
    line.calls.sendDue = false
    return false
  }
  let station = NONE
  let stationPlace = NONE
  let path = NONE
  let since = 0
  if (line.calls.sendDue) {
    const { callList } = line.calls
    for (let place = 0; place < callList.length; place++) {
      const s = callList.items[place]!
      if (line.stationHeld[s]! > 0) continue
      const called = line.calls.calledAt[s]!
      if (station !== NONE && (called > since || (called === since && s > station))) continue
      if (!hasFreeOperator(line, s)) continue
      station = s
      stationPlace = place
      since = called
    }
  }
  for (let k = 0; k < line.staff.manualFrom.length; k++) {
    const way = pathThatStarts(line, line.staff.manualFrom[k]!, false)
    if (way === NONE || line.manualStation[way] === NONE || line.staff.pathOperator[way] !== NONE) continue
    const waits = line.carrierSince[line.zoneCarrier[line.staff.manualFrom[k]!]!]!
    const isFirst = station === NONE && path === NONE
    if (!isFirst && (waits > since || (waits === since && (path === NONE || way > path)))) continue
    if (!hasFreeOperator(line, line.manualStation[way]!)) continue
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
    if (line.calls.stationSent[station] === line.calls.stationNeeds[station]) takeAt(line.calls.callList, stationPlace)
    return true
  }
  line.calls.sendDue = false
  return false
}

/** The next zone is claimed when the operator sets off; a transfer that stands otherwise turns meanwhile. */
function sendToPath(line: Line, path: number): void {
  const from = line.pathFrom[path]!
  const operator = nearestFree(line, line.manualStation[path]!)
  if (mustTurnIn(line, path)) startTurnIn(line, path)
  else claim(line, line.pathTo[path]!, line.zoneCarrier[from]!)
  line.zoneWay[from] = path
  line.staff.pathOperator[path] = operator
  send(line, operator, line.stations + path, line.manualStation[path]!)
}

/** @param task  the station, or the number of stations plus the path */
function send(line: Line, operator: number, task: number, station: number): void {
  const walk = line.staff.walkSeconds[line.staff.operatorPlace[operator]! * line.stations + station]!
  line.staff.operatorsFree--
  line.staff.operatorTask[operator] = task
  line.staff.operatorPlace[operator] = station
  if (task < line.stations) line.calls.stationSent[station]!++
  line.collector.touch(line.stationZone[station]!)
  if (line.trace !== null) line.trace.add(line.now, OPERATOR_SENT, station, NONE, operator)
  if (walk === 0) {
    arrive(line, operator)
    return
  }
  line.activity++
  line.staff.operatorWalks[operator] = 1
  line.queue.times[line.operatorSlot + operator] = line.now + walk
  startTimer(line, line.operatorSlot + operator)
}
