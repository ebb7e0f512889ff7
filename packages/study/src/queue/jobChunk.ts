import type { LineSpec } from '@loopwright/line'
import { lawOrNull } from '@loopwright/line/bounds'
import { expectedMoves } from '../runs/expectedMoves.ts'
import { rowLayout } from '../runs/runRow.ts'

const REPLICATIONS_MAX = 50
/** moves from zone to zone of a job: about a second */
const MOVES = 1_000_000
/** of a line of which nothing is known before it runs */
const UNKNOWN = 5
/** of its answer */
const BYTES = 4_000_000

/**
 * Replications of one job: about a second of work, 50 at most. It depends on the line alone, so that whoever asks again asks for the same jobs.
 *
 * @param carriers  count, ≥ 1
 * @example jobChunk(line, 4) // => 50
 */
export function jobChunk(spec: LineSpec, carriers: number): number {
  const moves = expectedMoves(spec, lawOrNull(spec), carriers)
  const byWork = Number.isFinite(moves) ? Math.floor(MOVES / moves) : UNKNOWN
  const bySize = Math.floor(BYTES / answerBytes(spec))
  return Math.max(1, Math.min(REPLICATIONS_MAX, byWork, bySize))
}

/** Bytes of the row of one replication. */
export const answerBytes = (spec: LineSpec): number => rowLayout(spec).length * Float64Array.BYTES_PER_ELEMENT
