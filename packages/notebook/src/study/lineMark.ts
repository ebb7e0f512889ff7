import { createHash } from 'node:crypto'
import type { LineSpec } from '@loopwright/line'

/** Twelve digits by which a reader knows the very line that was simulated again: the start of the SHA-256 of its specification. */
export function lineMark(line: LineSpec): string {
  return createHash('sha256').update(JSON.stringify(line)).digest('hex').slice(0, 12)
}
