import { toGridAt } from '@loopwright/kernel'
import type { Distribution, SamplerTable } from '@loopwright/stats'
import { normalQuantilesInto } from '@loopwright/stats/special'
import type { LineSpec } from '../spec.ts'
import { type Line, NONE, USES_INDEX, USES_NOTHING, USES_UNIFORM } from '../instant/state.ts'

/** Draws made at once for products to come: a power of two, at most the first room of a ring. */
const BLOCK = 16
/** What the ring of a task holds: uniforms, or normal quantiles; from 0 on, times by the sampler of that index, which all its entries equal. */
const UNIFORMS = -1
const NORMALS = -2

/**
 * What the draws of each task can be worked out to before it is known for which station and variant: its time, where all entries are the same; the normal quantile,
 * where all are made from one. Streams past the tasks, of inspections, keep their uniforms.
 */
export function drawnAhead(
  spec: LineSpec,
  { entrySampler }: Pick<Line, 'entrySampler'>,
  samplers: SamplerTable,
  streams: number,
): Int32Array {
  const variants = spec.variants.length
  const found = new Int32Array(streams).fill(UNIFORMS)
  const seen = new Map<number, Distribution>()
  const given = spec.stations.flatMap(({ unload, load, work }) => [unload, load, work].flatMap((tasks) => tasks ?? []))
  given.forEach(({ task, seconds }, entry) => {
    seconds.forEach((distribution, variant) => {
      if (distribution === null) return
      const sampler = entrySampler[entry * variants + variant]!
      const first = seen.get(task)
      if (first === undefined) {
        seen.set(task, distribution)
        found[task] = sampler
      } else if (found[task]! >= 0 && JSON.stringify(first) !== JSON.stringify(distribution)) {
        found[task] = samplers.isFromNormal(found[task]!) && samplers.isFromNormal(sampler) ? NORMALS : UNIFORMS
      } else if (found[task] === NORMALS && !samplers.isFromNormal(sampler)) found[task] = UNIFORMS
    })
  })
  return found
}

/**
 * Draws from a stream in order of use, into `drawn`; seconds on the grid. A constant takes no draw.
 * Use k takes uniform k also after uses that took theirs from a list, where one stream serves both (two paths out of a zone). (MODEL.md §9)
 */
export function drawInOrder(line: Line, sampler: number, stream: number): void {
  const uses = line.samplerUses[sampler]!
  let k = 0
  if (uses !== USES_NOTHING) {
    k = line.streamUses[stream]!
    line.streamUses[stream] = k + 1
    line.streams.next(stream)
  }
  line.samplers.drawAt(sampler, line.streams.u, 0, k)
  line.drawn[0] = line.samplers.value[0]!
  toGridAt(line.drawn, 0)
}

/** The product's own draw of a task, or past the tasks of an inspection, as its place in `taskUniforms`: draw k belongs to serial k, whoever asks first. */
export function placeForProduct(line: Line, task: number, serial: number): number {
  if (line.taskDrawn[task]! <= serial) drawAhead(line, task, serial)
  return task * line.taskRoom + (serial & (line.taskRoom - 1))
}

/** Draws a task's time for a product, into `drawn`: draw k of the task's stream belongs to serial k, whoever asks first. (MODEL.md §9) */
export function drawForProduct(line: Line, sampler: number, task: number, serial: number): void {
  const uses = line.samplerUses[sampler]!
  if (uses !== USES_UNIFORM) {
    line.samplers.drawAt(sampler, line.taskUniforms, 0, uses === USES_INDEX ? serial : 0)
    line.drawn[0] = line.samplers.value[0]!
    toGridAt(line.drawn, 0)
    return
  }
  const at = placeForProduct(line, task, serial)
  const ahead = line.taskAhead[task]!
  if (ahead >= 0) {
    line.drawn[0] = line.taskUniforms[at]!
    return
  }
  if (ahead === NORMALS) line.samplers.drawFromNormal(sampler, line.taskUniforms, at)
  else line.samplers.drawAt(sampler, line.taskUniforms, at, 0)
  line.drawn[0] = line.samplers.value[0]!
  toGridAt(line.drawn, 0)
}

/** Draws whole blocks until the one with the serial. */
function drawAhead(line: Line, task: number, serial: number): void {
  const { taskUniforms, taskDrawn, samplers } = line
  const ahead = line.taskAhead[task]!
  while (taskDrawn[task]! <= serial) {
    const first = task * line.taskRoom + (taskDrawn[task]! & (line.taskRoom - 1))
    line.streams.nextBlockInto(line.taskStream[task]!, taskUniforms, first, BLOCK)
    taskDrawn[task]! += BLOCK
    if (ahead === NORMALS) normalQuantilesInto(taskUniforms, first, BLOCK)
    if (ahead < 0) continue
    samplers.drawBlock(ahead, taskUniforms, first, BLOCK)
    for (let at = first; at < first + BLOCK; at++) toGridAt(taskUniforms, at)
  }
}

/** Makes room for the draws of a new product beside those of all that are still in the line. */
export function makeRoomFor(line: Line, serial: number): void {
  // blocks are whole: the last draw made for it
  const newest = serial | (BLOCK - 1)
  if (newest - line.oldestSerial < line.taskRoom) return
  let oldest = serial
  for (let c = 0; c < line.carriers; c++) {
    const held = line.carrierSerial[c]!
    if (held !== NONE && held < oldest) oldest = held
  }
  line.oldestSerial = oldest
  if (newest - oldest < line.taskRoom) return
  const room = line.taskRoom
  const wider = new Float64Array(2 * room * line.taskStream.length)
  for (let task = 0; task < line.taskStream.length; task++) {
    const drawn = line.taskDrawn[task]!
    for (let k = Math.max(0, drawn - room); k < drawn; k++) {
      wider[task * 2 * room + (k & (2 * room - 1))] = line.taskUniforms[task * room + (k & (room - 1))]!
    }
  }
  line.taskUniforms = wider
  line.taskRoom = 2 * room
}
