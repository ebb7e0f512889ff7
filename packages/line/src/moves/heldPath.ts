/** What is under way on a path while a stop holds one of its ends. (MODEL.md §7) */
import { timeClear } from './clear.ts'
import { wake } from './moveHeap.ts'
import { followPath } from '../stops/operation.ts'
import { holdWatch, resumeWatch } from '../stops/safety.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { isClearOver, MOVING } from '../state/moves.ts'
import { holdTimer, resumeTimer } from '../state/timer.ts'

/** A stop now holds one end of the path: what is under way on it stands still. */
export function holdPath(line: Line, path: number): void {
  const { stops, graph, slots, moves } = line
  if (stops.pathHeld[path] === 1) return
  stops.pathHeld[path] = 1
  const from = graph.pathFrom[path]!
  if (graph.pathTo[path] === line.store) eachOnTheWay(line, path, holdTimer, holdWatch)
  else {
    holdTimer(line, slots.arrivalSlot + path)
    holdWatch(line, moves.pathCarrier[path]!)
  }
  if (moves.leavingPath[from] === path) {
    if (!isClearOver(line, from)) timeClear(line, from)
    holdTimer(line, slots.clearSlot + from)
  }
  followPath(line, path)
}

/** If no stop holds the path any longer, what was under way goes on. */
export function resumePath(line: Line, path: number): void {
  const { graph, stops, slots, moves } = line
  const from = graph.pathFrom[path]!
  wake(line, from)
  if (stops.pathHeld[path] === 0 || stops.zoneHeld[from]! > 0 || stops.zoneHeld[graph.pathTo[path]!]! > 0) return
  if (stops.breaksNow > 0 && graph.manualStation[path] !== NONE) return
  stops.pathHeld[path] = 0
  if (graph.pathTo[path] === line.store) eachOnTheWay(line, path, resumeTimer, resumeWatch)
  else {
    resumeTimer(line, slots.arrivalSlot + path)
    resumeWatch(line, moves.pathCarrier[path]!)
  }
  if (moves.leavingPath[from] === path) resumeTimer(line, slots.clearSlot + from)
  followPath(line, path)
}

/** Does it with the timer of every carrier that is on the path into the store: there may be several. */
function eachOnTheWay(
  line: Line,
  path: number,
  doIt: (line: Line, slot: number) => void,
  watch: (line: Line, carrier: number) => void,
): void {
  const { moves } = line
  for (let carrier = 0; carrier < line.carriers; carrier++) {
    if (moves.carrierPath[carrier] !== path || moves.carrierPhase[carrier] !== MOVING) continue
    doIt(line, line.slots.storeSlot + carrier)
    watch(line, carrier)
  }
}
