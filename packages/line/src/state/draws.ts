/** Random numbers: streams, samplers, and what is drawn ahead. (MODEL.md §9) */
import type { SamplerTable, StreamTable } from '@loopwright/stats'

/** How a sampler is fed. */
export const USES_NOTHING = 0
export const USES_UNIFORM = 1
export const USES_INDEX = 2

export interface Draws {
  readonly streams: StreamTable
  readonly samplers: SamplerTable
  /** USES_… of each sampler */
  readonly samplerUses: Uint8Array
  /** the last time drawn, seconds on the grid; length 1: a number in a place of its own is never boxed */
  readonly drawn: Float64Array
  /** draws taken so far from the replay list of a stream; length streams */
  readonly streamUses: Int32Array
  readonly taskStream: Int32Array
  /** draws of the tasks by serial, a ring for each task, drawn in blocks; length tasks · taskRoom */
  taskUniforms: Float64Array
  taskRoom: number
  /** no product in the line has a lower one; looked up anew where the rings are full */
  oldestSerial: number
  /** draws made so far, by task */
  readonly taskDrawn: Int32Array
  /** by task: what its ring holds (draw.ts) */
  readonly taskAhead: Int32Array
}
