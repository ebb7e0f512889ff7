/** Lines from code: a loop, a straight line or any graph in a few words, each part by its name; and the same line with something changed. */
import { withChange } from './change.ts'
import { specOf } from './lineSpec.ts'
import { LineError, type LineProblem } from './report.ts'
import type { LineChange } from './change.ts'
import type { LineSketch, Shape } from './sketch.ts'
import type { LineSpec } from '../spec.ts'

/** A line, as it was said and complete. */
export interface SketchedLine {
  readonly sketch: LineSketch
  /** every field present, defaults too: what `simulate` and all studies take */
  readonly spec: LineSpec
  /** what is doubtful about it, in the words of a scenario file */
  readonly warnings: readonly LineProblem[]
  /**
   * The same line with something changed; this one stays as it is.
   *
   * @throws LineError  as the line itself
   */
  with(change: LineChange): SketchedLine
}

/**
 * A closed loop: each zone leads on to the next one, the last to the first; `paths` give own values, and ways to zones `beside` it.
 *
 * @throws LineError  if the line cannot be built; it tells every finding with its place and remedy
 * @example loopLine({ zones: 10, zoneLength: 1.5, drive: { speed: 0.3 }, carriers: { count: 4, length: 1.2 }, end: 3600 }).spec.zones[9].name // => 'Z10'
 * @example loopLine({ zones: 10, zoneLength: 1.5, drive: { speed: 0.3 }, carriers: { count: 4, length: 1.2 }, end: 3600 }).with({ carriers: 8 }).spec.carriers.count // => 8
 */
export const loopLine = (sketch: LineSketch): SketchedLine => sketched('loop', sketch)

/**
 * A straight line: carriers come from the store, go through all zones in order, and back into the store, where they start too.
 *
 * @throws LineError  as `loopLine`
 * @example straightLine({ zones: 3, zoneLength: 1.5, drive: { speed: 0.3 }, carriers: { count: 4, length: 1.2 }, end: 3600 }).spec.paths.length // => 4
 */
export const straightLine = (sketch: LineSketch): SketchedLine => sketched('straight', sketch)

/**
 * Any line: zones, and the paths between them, such as `Z01 > Z02 > Z01`.
 *
 * @throws LineError  as `loopLine`
 * @example graphLine({ zones: 2, zoneLength: 1.5, drive: { speed: 0.3 }, paths: ['Z01 > Z02 > Z01'], carriers: { count: 1, length: 1.2 }, end: 3600 }).spec.paths.length // => 2
 */
export const graphLine = (sketch: LineSketch): SketchedLine => sketched('graph', sketch)

function sketched(shape: Shape, sketch: LineSketch): SketchedLine {
  const { spec, problems } = specOf(shape, sketch)
  const errors = problems.filter(({ severity }) => severity === 'error')
  if (errors.length > 0) throw new LineError(errors)
  return { sketch, spec, warnings: problems, with: (change) => sketched(shape, withChange(sketch, change)) }
}
