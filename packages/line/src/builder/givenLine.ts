/** A line as runs and studies take it: from code, or complete. */
import { sentences } from '../check/sentences.ts'
import type { LineSpec } from '../spec.ts'
import { LineError } from './report.ts'
import { foundWords, isRecord } from './valueForms.ts'

/** A line: complete, or one from code, which has its complete form. */
export type GivenLine = LineSpec | { readonly spec: LineSpec }

/**
 * The complete line of one that is given either way.
 *
 * @throws LineError  where it is none, such as a sketch that no line was made of
 * @example completeLine(loopLine({ zones: 4, zoneLength: 1.5, drive: { speed: 0.3 }, carriers: { count: 2, length: 1.2 }, end: 60 })).zones.length // => 4
 */
export function completeLine(line: GivenLine): LineSpec {
  const given: unknown = line
  const spec: unknown = isRecord(given) && 'spec' in given ? given.spec : given
  if (isRecord(spec) && Array.isArray(spec.zones) && isRecord(spec.window)) return spec as unknown as LineSpec
  throw new LineError([{ path: 'line', ...sentences.wrongType(WANTED, foundWords(spec)) }])
}

const WANTED = 'a line: what loopLine, straightLine or graphLine makes, or one that is complete'
