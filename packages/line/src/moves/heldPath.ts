/** What is under way on a path while a stop holds one of its ends. (MODEL.md §7) */
import { wake } from './moveHeap.ts'
import { operateIn, operateOut } from '../stops/operation.ts'
import { holdWatch, resumeWatch } from '../stops/safety.ts'
import { CLEAR_TIMED, type Line, MOVING, NONE } from '../instant/state.ts'
import { holdTimer, resumeTimer } from '../build/timer.ts'

/** A stop now holds one end of the path: what is under way on it stands still. */
export function holdPath(line: Line, path: number): void {
  if (line.pathHeld[path] === 1) return
  line.pathHeld[path] = 1
  const from = line.pathFrom[path]!
  if (line.pathTo[path] === line.store) eachOnTheWay(line, path, holdTimer, holdWatch)
  else {
    holdTimer(line, line.arrivalSlot + path)
    holdWatch(line, line.pathCarrier[path]!)
  }
  if (line.leavingPath[from] === path) holdTimer(line, line.clearSlot + from)
  operateIn(line, path, 0)
  operateOut(line, path, 0)
}

/** If no stop holds the path any longer, what was under way goes on. */
export function resumePath(line: Line, path: number): void {
  const from = line.pathFrom[path]!
  wake(line, from)
  if (line.pathHeld[path] === 0 || line.zoneHeld[from]! > 0 || line.zoneHeld[line.pathTo[path]!]! > 0) return
  if (line.breaksNow > 0 && line.manualStation[path] !== NONE) return
  line.pathHeld[path] = 0
  if (line.pathTo[path] === line.store) eachOnTheWay(line, path, resumeTimer, resumeWatch)
  else {
    resumeTimer(line, line.arrivalSlot + path)
    resumeWatch(line, line.pathCarrier[path]!)
  }
  if (line.pathCarrier[path] !== NONE) operateIn(line, path, 1)
  if (line.leavingPath[from] !== path) return
  resumeTimer(line, line.clearSlot + from)
  if (line.zoneClearing[from] === CLEAR_TIMED) operateOut(line, path, 1)
}

/** Does it with the timer of every carrier that is on the path into the store: there may be several. */
function eachOnTheWay(
  line: Line,
  path: number,
  doIt: (line: Line, slot: number) => void,
  watch: (line: Line, carrier: number) => void,
): void {
  for (let carrier = 0; carrier < line.carriers; carrier++) {
    if (line.carrierPath[carrier] !== path || line.carrierPhase[carrier] !== MOVING) continue
    doIt(line, line.storeSlot + carrier)
    watch(line, carrier)
  }
}
