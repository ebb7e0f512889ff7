/**
 * The clear of a zone behind the carrier that left it. (MODEL.md §3)
 * Where nobody waits and no stop holds it, it has no timer: its instant is known, and made good when somebody asks.
 */
import { drawInOrder } from '../work/draw.ts'
import { PACE_CLEAR } from './motion.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { CLAIMED, CLEAR_KNOWN, CLEAR_NOW, CLEAR_TIMED, DONE, FREE, isClearOver, LOOKING, SAME_AS_MOVE } from '../state/moves.ts'
import { TO_WAY_IN } from '../state/transfers.ts'
import { startTimer } from '../state/timer.ts'
import { CLEAR } from '../telling/trace.ts'
import { leaveClear } from './transfer.ts'
import { wayOf } from './wayOut.ts'

/** `moveSlot`: the timer of the move. The clear of the zone that is left: its time, and a timer where somebody waits for it. */
export function startClear(line: Line, path: number, atSpeed: number, moveSlot: number): void {
  const { now, queue, moves } = line
  const zone = line.graph.pathFrom[path]!
  const slot = line.slots.clearSlot + zone
  const given = moves.clearSampler[path]!
  if (given === SAME_AS_MOVE) queue.times[slot] = queue.times[moveSlot]!
  else if (given === NONE) queue.times[slot] = now + moves.paceSeconds[moves.pathPace[path]! + PACE_CLEAR + atSpeed]!
  else {
    drawInOrder(line, given, moves.clearStream[path]!)
    queue.times[slot] = now + line.draws.drawn[0]!
  }
  if (moves.clearIsPlain[path] === 1 && line.trace === null && !isWaitedFor(line, zone)) {
    moves.zoneClearing[zone] = CLEAR_KNOWN
    return
  }
  moves.zoneClearing[zone] = CLEAR_TIMED
  line.activity++
  startTimer(line, slot)
}

/** The tail has left the zone and the control has seen it. */
export function onClear(line: Line, zone: number): void {
  const { moves } = line
  moves.zoneClearing[zone] = CLEAR_NOW
  line.activity--
  if (line.trace !== null) line.trace.add(line.now, CLEAR, zone, NONE, 0)
  leaveClear(line, zone)
}

/** Whether the next zone takes this carrier: free (and behind exit-clear transfers all up to the next place to stand), or set aside for it. */
export function nextZoneTakes(line: Line, path: number, carrier: number): boolean {
  const { graph, moves } = line
  let zone = graph.pathTo[path]!
  if (moves.zoneState[zone] === CLAIMED) {
    return moves.zoneClaimant[zone] === carrier && moves.zoneCarrier[zone] === NONE && line.transfers.zoneChange[zone] !== TO_WAY_IN
  }
  for (let steps = 0; steps <= line.zones && isFree(line, zone); steps++) {
    if (graph.exitClear[zone] === 0) return true
    const way = wayOf(line, zone, carrier)
    if (way === NONE) return false
    zone = graph.pathTo[way]!
  }
  return false
}

/** Whether the zone is free now; a clear without a timer that is over by now is made good here. */
function isFree(line: Line, zone: number): boolean {
  if (line.moves.zoneState[zone] === FREE) return true
  if (!isClearOver(line, zone)) return false
  makeClear(line, zone)
  return true
}

/** Makes a clear good that is over by now: nobody waited for it, so that only the zone and what is told of it change. */
function makeClear(line: Line, zone: number): void {
  const { moves } = line
  moves.zoneClearing[zone] = CLEAR_NOW
  moves.zoneState[zone] = FREE
  line.events++
  line.collector.onLateClear(zone)
}

/** Makes good every clear that is over by `line.now`. */
export function makeAllClear(line: Line): void {
  for (let zone = 0; zone < line.zones; zone++) {
    if (isClearOver(line, zone)) makeClear(line, zone)
  }
}

/** Gives the clear of the zone a timer: somebody waits for it. False: it has none to come. */
export function timeClear(line: Line, zone: number): boolean {
  const { moves, slots } = line
  if (moves.zoneClearing[zone] !== CLEAR_KNOWN) return false
  moves.zoneClearing[zone] = CLEAR_TIMED
  line.activity++
  startTimer(line, slots.clearSlot + zone)
  return true
}

/** A carrier waits to move along the path: if what it waits for is a clear without a timer, that gets one. */
export function waitFor(line: Line, path: number): void {
  const { graph } = line
  let zone = graph.pathTo[path]!
  while (graph.isLoop && line.moves.zoneState[zone] === FREE && graph.exitClear[zone] === 1) zone = graph.zoneNext[zone]!
  timeClear(line, zone)
}

/** Whether a carrier stands before the zone, or before exit-clear transfers in front of it, and waits for it or looks whether it can go on; where ways part it may be another that it waits for. */
export function isWaitedFor(line: Line, zone: number): boolean {
  const { feeders } = line.graph
  const { zoneCarrier, carrierPhase } = line.moves
  for (let k = feeders.first[zone]!; k < feeders.first[zone + 1]!; k++) {
    const carrier = zoneCarrier[feeders.items[k]!]!
    if (carrier === NONE) continue
    const phase = carrierPhase[carrier]!
    if (phase === DONE || phase === LOOKING) return true
    if (line.graph.isLoop) return false
  }
  return false
}
