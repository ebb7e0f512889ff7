import { toGridAt } from '@loopwright/kernel'
import { type Line, NONE, USES_INDEX, USES_NOTHING, USES_UNIFORM } from './state.ts'

/** Draws from a stream in order of use, into `drawn`; seconds on the grid. A constant takes no draw. (MODEL.md §9) */
export function drawInOrder(line: Line, sampler: number, stream: number): void {
  const uses = line.samplerUses[sampler]!
  let k = 0
  if (uses !== USES_NOTHING) {
    k = line.streamUses[stream]!
    line.streamUses[stream] = k + 1
    if (uses === USES_UNIFORM) line.streams.next(stream)
  }
  line.samplers.drawAt(sampler, line.streams.u, 0, k)
  line.drawn[0] = line.samplers.value[0]!
  toGridAt(line.drawn, 0)
}

/** The product's own draw of the stream `task` (of a task, or past them of an inspection): draw k belongs to serial k. */
export function uniformForProduct(line: Line, task: number, serial: number): number {
  const room = line.taskRoom
  while (line.taskDrawn[task]! <= serial) {
    line.streams.nextInto(line.taskStream[task]!, line.taskUniforms, task * room + (line.taskDrawn[task]! & (room - 1)))
    line.taskDrawn[task]!++
  }
  return line.taskUniforms[task * room + (serial & (room - 1))]!
}

/** Draws a task's time for a product, into `drawn`: draw k of the task's stream belongs to serial k, whoever asks first. (MODEL.md §9) */
export function drawForProduct(line: Line, sampler: number, task: number, serial: number): void {
  const uses = line.samplerUses[sampler]!
  const room = line.taskRoom
  const first = task * room
  if (uses === USES_UNIFORM) {
    while (line.taskDrawn[task]! <= serial) {
      line.streams.nextInto(line.taskStream[task]!, line.taskUniforms, first + (line.taskDrawn[task]! & (room - 1)))
      line.taskDrawn[task]!++
    }
  }
  line.samplers.drawAt(sampler, line.taskUniforms, first + (serial & (room - 1)), uses === USES_INDEX ? serial : 0)
  line.drawn[0] = line.samplers.value[0]!
  toGridAt(line.drawn, 0)
}

/** Makes room for the draws of a new product beside those of all that are still in the line. */
export function makeRoomFor(line: Line, serial: number): void {
  let oldest = serial
  for (let c = 0; c < line.carriers; c++) {
    const held = line.carrierSerial[c]!
    if (held !== NONE && held < oldest) oldest = held
  }
  if (serial - oldest < line.taskRoom) return
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
