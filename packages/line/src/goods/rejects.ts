/** Inspections, and what a rejected product has to have again. (MODEL.md §5) */
import { drawForProduct, drawInOrder, placeForProduct } from '../work/draw.ts'
import type { Names } from '../state/registry.ts'
import type { LineSpec } from '../spec.ts'
import type { Rejects } from '../state/goods.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'
import { REJECT } from '../telling/trace.ts'

/** What `rework` says of a task. */
const NO_REWORK = 0
const REWORK = 1
const REWORK_ONLY = 2

export function buildRejects(spec: LineSpec, carriers: number, names: Names): Rejects {
  const taskRework = new Uint8Array(spec.tasks.length)
  for (const { task, only } of spec.rework) taskRework[task] = only ? REWORK_ONLY : REWORK
  const taskInspection = new Int32Array(spec.tasks.length).fill(NONE)
  spec.inspections.forEach(({ task }, k) => {
    taskInspection[task] = k
  })
  return {
    taskRework,
    taskInspection,
    rejectProbability: Float64Array.from(spec.inspections, (inspection) => inspection.rejectProbability),
    reworkStream: Int32Array.from(spec.tasks, (name, task) => (taskRework[task] === NO_REWORK ? NONE : names.of(`rework/${name}`))),
    inspectAgainStream: Int32Array.from(spec.inspections, ({ task }) => names.of(`inspect-again/${spec.tasks[task]}`)),
    carrierFresh: new Uint8Array(carriers),
    taskListed: new Uint8Array(carriers * spec.tasks.length),
    taskNow: new Uint8Array(spec.tasks.length),
  }
}

/** Whether the carrier's product has this task to do now: not had yet and not for rejected ones only, or on its list and not of this very stay. */
export function isTaskDue(line: Line, carrier: number, task: number): boolean {
  const { work } = line
  const at = carrier * line.tasks + task
  if (!line.hasRejects) return work.taskDone[at] === 0
  const { rejects } = line
  if (rejects.taskListed[at] === 1) return rejects.carrierFresh[carrier] === 0
  return work.taskDone[at] === 0 && rejects.taskRework[task] !== REWORK_ONLY
}

/** Draws the time of a task where there is rework: the product's own draw the first time, in order of use when it is repeated. */
export function drawAgain(line: Line, sampler: number, task: number, carrier: number): void {
  if (line.work.taskDone[carrier * line.tasks + task] === 1) drawInOrder(line, sampler, line.rejects.reworkStream[task]!)
  else drawForProduct(line, sampler, task, line.goods.carrierSerial[carrier]!)
}

/**
 * The tasks of a duty count as had, then its inspections decide, in list order.
 * `taskNow` holds 1 for the tasks that were done in this duty and 2 for those of them that were repeated.
 */
export function judgeProduct(line: Line, station: number, duty: number, carrier: number): void {
  const { work, goods, rejects, draws } = line
  const first = work.dutyFirst[3 * station + duty]!
  const last = work.dutyFirst[3 * station + duty + 1]!
  const own = carrier * line.tasks
  const serial = goods.carrierSerial[carrier]!
  let shortened = false
  for (let entry = first; entry < last; entry++) {
    const task = work.entryTask[entry]!
    const due = work.entrySampler[entry * line.variants + goods.carrierVariant[carrier]!] !== NONE && isTaskDue(line, carrier, task)
    rejects.taskNow[task] = !due ? 0 : work.taskDone[own + task] === 1 ? 2 : 1
  }
  for (let entry = first; entry < last; entry++) {
    const task = work.entryTask[entry]!
    if (rejects.taskNow[task] === 0) continue
    work.taskDone[own + task] = 1
    if (rejects.taskListed[own + task] === 1) {
      rejects.taskListed[own + task] = 0
      shortened = true
    }
  }
  if (shortened && !hasList(line, own)) goods.carrierRejected[carrier] = 0
  let rejected = false
  for (let entry = first; entry < last; entry++) {
    const task = work.entryTask[entry]!
    const inspection = rejects.taskInspection[task]!
    if (inspection === NONE || rejects.taskNow[task] === 0) continue
    const probability = rejects.rejectProbability[inspection]!
    if (probability === 0) continue
    if (rejects.taskNow[task] === 2) {
      draws.streams.next(rejects.inspectAgainStream[inspection]!)
      if (draws.streams.u[0]! < probability) rejected = true
    } else {
      const place = placeForProduct(line, line.tasks + inspection, serial)
      if (draws.taskUniforms[place]! < probability) rejected = true
    }
  }
  if (rejected) reject(line, carrier)
}

function hasList(line: Line, own: number): boolean {
  for (let task = 0; task < line.tasks; task++) if (line.rejects.taskListed[own + task] === 1) return true
  return false
}

/** The list is made anew: tasks marked `rework` that the product has had, and those for rejected ones only. */
function reject(line: Line, carrier: number): void {
  const { goods, rejects } = line
  const own = carrier * line.tasks
  goods.carrierRejected[carrier] = 1
  rejects.carrierFresh[carrier] = 1
  for (let task = 0; task < line.tasks; task++) {
    const kind = rejects.taskRework[task]
    rejects.taskListed[own + task] = kind === REWORK_ONLY || (kind === REWORK && line.work.taskDone[own + task] === 1) ? 1 : 0
  }
  line.collector.rejections++
  if (line.trace !== null) line.trace.add(line.now, REJECT, line.moves.carrierZone[carrier]!, carrier, goods.carrierSerial[carrier]!)
}
