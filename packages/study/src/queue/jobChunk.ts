import type { LineSpec } from '@loopwright/line'
import { lawOrNull } from '@loopwright/line/bounds'
import { expectedEvents } from '../runs/expectedEvents.ts'
import { rowLayout } from '../runs/runRow.ts'

const REPLICATIONS_MAX = 50
/** events of a job: up to about a second */
const EVENTS = 10_000_000
/** of its answer */
const BYTES = 4_000_000

/**
 * Replications of one job: up to about a second of work, 50 at most. It depends on the line alone, so that whoever asks again asks for the same jobs.
 *
 * @param carriers  count, ≥ 1
 * @example jobChunk(line, 4) // => 50
 */
export function jobChunk(spec: LineSpec, carriers: number): number {
  const byWork = Math.floor(EVENTS / expectedEvents(spec, lawOrNull(spec), carriers))
  const bySize = Math.floor(BYTES / answerBytes(spec))
  return Math.max(1, Math.min(REPLICATIONS_MAX, byWork, bySize))
}

/** Bytes of the row of one replication. */
export const answerBytes = (spec: LineSpec): number => rowLayout(spec).length * Float64Array.BYTES_PER_ELEMENT
