/** A line as runs and studies take it: from code, or complete. */
import type { LineSpec } from '../spec.ts'

/** A line: complete, or one from code, which has its complete form. */
export type GivenLine = LineSpec | { readonly spec: LineSpec }

/**
 * The complete line of one that is given either way.
 *
 * @example completeLine(loopLine({ zones: 4, zoneLength: 1.5, drive: { speed: 0.3 }, carriers: { count: 2, length: 1.2 }, end: 60 })).zones.length // => 4
 */
export const completeLine = (line: GivenLine): LineSpec => ('spec' in line ? line.spec : line)
