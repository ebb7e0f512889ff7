import { toGridAt } from '@loopwright/kernel'
import type { Distribution, SamplerTable } from '@loopwright/stats'
import { normalQuantilesInto } from '@loopwright/stats/special'
import type { LineSpec } from '../spec.ts'
import { USES_INDEX, USES_NOTHING, USES_UNIFORM } from '../state/draws.ts'
import type { Line } from '../state/line.ts'
import { NONE } from '../state/lists.ts'

/** Draws made at once for products to come: a power of two, at most the first room of a ring. */
const BLOCK = 16
/** What the ring of a task holds: uniforms, or normal quantiles; from 0 on, times by the sampler of that index, which all its entries equal. */
const UNIFORMS = -1
const NORMALS = -2

/**
 * What the draws of each task can be worked out to before it is known for which station and variant: its time, where all entries are the same; the normal quantile,
 * where all are made from one. Streams past the tasks, of inspections, keep their uniforms.
 */
export function drawnAhead(spec: LineSpec, entrySampler: Int32Array, samplers: SamplerTable, streams: number): Int32Array {
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
  const { draws } = line
  const uses = draws.samplerUses[sampler]!
  let k = 0
  if (uses !== USES_NOTHING) {
    k = draws.streamUses[stream]!
    draws.streamUses[stream] = k + 1
    draws.streams.next(stream)
  }
  draws.samplers.drawAt(sampler, draws.streams.u, 0, k)
  draws.drawn[0] = draws.samplers.value[0]!
  toGridAt(draws.drawn, 0)
}

/** The product's own draw of a task, or past the tasks of an inspection, as its place in `taskUniforms`: draw k belongs to serial k, whoever asks first. */
export function placeForProduct(line: Line, task: number, serial: number): number {
  const { draws } = line
  if (draws.taskDrawn[task]! <= serial) drawAhead(line, task, serial)
  return task * draws.taskRoom + (serial & (draws.taskRoom - 1))
}

/** Draws a task's time for a product, into `drawn`: draw k of the task's stream belongs to serial k, whoever asks first. (MODEL.md §9) */
export function drawForProduct(line: Line, sampler: number, task: number, serial: number): void {
  const { draws } = line
  const uses = draws.samplerUses[sampler]!
  if (uses !== USES_UNIFORM) {
    draws.samplers.drawAt(sampler, draws.taskUniforms, 0, uses === USES_INDEX ? serial : 0)
    draws.drawn[0] = draws.samplers.value[0]!
    toGridAt(draws.drawn, 0)
    return
  }
  const at = placeForProduct(line, task, serial)
  const ahead = draws.taskAhead[task]!
  if (ahead >= 0) {
    draws.drawn[0] = draws.taskUniforms[at]!
    return
  }
  if (ahead === NORMALS) draws.samplers.drawFromNormal(sampler, draws.taskUniforms, at)
  else draws.samplers.drawAt(sampler, draws.taskUniforms, at, 0)
  draws.drawn[0] = draws.samplers.value[0]!
  toGridAt(draws.drawn, 0)
}

/** Draws whole blocks until the one with the serial. */
function drawAhead(line: Line, task: number, serial: number): void {
  const { draws } = line
  const { taskUniforms, taskDrawn, samplers } = draws
  const ahead = draws.taskAhead[task]!
  while (taskDrawn[task]! <= serial) {
    const first = task * draws.taskRoom + (taskDrawn[task]! & (draws.taskRoom - 1))
    draws.streams.nextBlockInto(draws.taskStream[task]!, taskUniforms, first, BLOCK)
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
  const { draws } = line
  const newest = serial | (BLOCK - 1)
  if (newest - draws.oldestSerial < draws.taskRoom) return
  let oldest = serial
  for (let c = 0; c < line.carriers; c++) {
    const held = line.goods.carrierSerial[c]!
    if (held !== NONE && held < oldest) oldest = held
  }
  draws.oldestSerial = oldest
  if (newest - oldest < draws.taskRoom) return
  const room = draws.taskRoom
  const wider = new Float64Array(2 * room * draws.taskStream.length)
  for (let task = 0; task < draws.taskStream.length; task++) {
    const drawn = draws.taskDrawn[task]!
    for (let k = Math.max(0, drawn - room); k < drawn; k++) {
      wider[task * 2 * room + (k & (2 * room - 1))] = draws.taskUniforms[task * room + (k & (room - 1))]!
    }
  }
  draws.taskUniforms = wider
  draws.taskRoom = 2 * room
}
