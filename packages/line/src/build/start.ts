/** The line at time 0: carriers empty, at rest and done. (MODEL.md §10) */

import { resetSupplies } from '../goods/arrivals.ts'
import { wake } from '../moves/moveHeap.ts'
import { wayNow } from '../moves/wayOut.ts'
import { resetOperators } from '../operators/operators.ts'
import type { Draws } from '../state/draws.ts'
import type { Goods, Rejects } from '../state/goods.ts'
import type { Graph } from '../state/graph.ts'
import type { Line } from '../state/line.ts'
import { clearList, NONE } from '../state/lists.ts'
import { DONE, FREE, type Moves, OCCUPIED } from '../state/moves.ts'
import type { Stops } from '../state/stops.ts'
import { NO_CHANGE, type Transfers } from '../state/transfers.ts'
import type { Calls, Work } from '../state/work.ts'
import { startStops } from '../stops/stop.ts'
import { putInStore } from '../work/store.ts'

/** Sets the line to time 0 of a replication: every column, so that nothing of a run before is left. */
export function resetLine(line: Line, seed: string, replication: number): void {
  line.now = 0
  line.events = 0
  line.activity = 0
  line.queue.clear()
  line.slots.isHeldBack.fill(0)
  resetDraws(line.draws, seed, replication)
  resetMoves(line.moves, line.graph)
  resetTransfers(line.transfers)
  resetWork(line.work, line.calls)
  resetGoods(line.goods, line.rejects)
  resetStops(line.stops, line)
  placeCarriers(line)
  if (line.trace !== null) line.trace.reset()
  resetOperators(line)
  resetSupplies(line)
  startStops(line)
  line.collector.reset()
}

type Column = Uint8Array | Int32Array | Float64Array

function zero(...columns: readonly Column[]): void {
  for (const column of columns) column.fill(0)
}

function none(...columns: readonly Int32Array[]): void {
  for (const column of columns) column.fill(NONE)
}

function resetDraws(draws: Draws, seed: string, replication: number): void {
  draws.streams.reset(seed, replication)
  draws.oldestSerial = 0
  zero(draws.streamUses, draws.taskDrawn)
}

function resetMoves(moves: Moves, { isLoop, onlyOut }: Graph): void {
  moves.zoneState.fill(FREE)
  moves.carrierPhase.fill(DONE)
  zero(moves.zoneClearing, moves.zoneStarts, moves.pathLooks, moves.carrierSince, moves.moveSince, moves.moveAt)
  none(moves.zoneCarrier, moves.zoneClaimant, moves.leavingPath, moves.zoneLastIn, moves.zoneWay)
  none(moves.pathCarrier, moves.carrierPath, moves.startPath)
  if (isLoop) moves.leavingPath.set(onlyOut)
  moves.storeItems.fill(0)
  moves.storeFirst = 0
  moves.storeCount = 0
  clearList(moves.moveList)
  clearList(moves.lookList)
}

function resetTransfers(transfers: Transfers): void {
  transfers.zoneChange.fill(NO_CHANGE)
  transfers.zonePosition.set(transfers.startPosition)
  clearList(transfers.changeList)
}

function resetWork(work: Work, calls: Calls): void {
  zero(work.stationDuty, work.stationServed, work.taskDone)
  clearList(work.workList)
  zero(calls.stationAside, calls.stationCalled, calls.calledAt, calls.stationSent, calls.stationThere)
  clearList(calls.asideList)
  clearList(calls.callList)
  calls.asideDue = true
}

function resetGoods(goods: Goods, rejects: Rejects): void {
  goods.nextSerial = 0
  goods.carrierSerial.fill(NONE)
  zero(goods.carrierVariant, goods.carrierLoaded, goods.carrierRejected, goods.mixGiven, goods.productSince)
  zero(goods.receiverBusy, goods.receiverAside, goods.receiverWaiting)
  zero(rejects.carrierFresh, rejects.taskListed, rejects.taskNow)
}

function resetStops(stops: Stops, { crew, safety, sections }: Line): void {
  zero(stops.zoneHeld, stops.stationHeld, stops.pathHeld, stops.sourceDown, stops.sourceLeft, stops.sourceTimed)
  zero(stops.stationUntil, stops.zoneUntil, stops.transferUntil, stops.knownEnd, sections.sectionUntil)
  stops.breaksNow = 0
  stops.breakNext = 0
  crew.crewsBusy = 0
  crew.crewDue = false
  zero(crew.sourceWaits, crew.failedAt)
  zero(safety.watchStation, safety.resetStation, safety.safetyActive)
}

function placeCarriers(line: Line): void {
  const { zoneCarrier, zoneState, carrierZone, startPlaces } = line.moves
  for (let carrier = 0; carrier < line.carriers; carrier++) {
    const place = startPlaces[carrier]!
    carrierZone[carrier] = place
    if (place === line.store) {
      putInStore(line, carrier)
      continue
    }
    zoneCarrier[place] = carrier
    zoneState[place] = OCCUPIED
    wake(line, place)
  }
  for (let carrier = 0; carrier < line.carriers; carrier++) {
    const place = startPlaces[carrier]!
    if (place !== line.store && line.transfers.zoneChanges[place] === 1) standAsWayOut(line, place)
  }
}

/** At time 0 the transfer under a carrier stands as its way out needs. (MODEL.md §4) */
function standAsWayOut(line: Line, zone: number): void {
  const { moves, transfers } = line
  const way = wayNow(line, zone, moves.zoneCarrier[zone]!)
  if (transfers.zoneFixes[zone] === 1) moves.zoneWay[zone] = way
  if (way !== NONE) transfers.zonePosition[zone] = transfers.pathFromPosition[way]!
}
