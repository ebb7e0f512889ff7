/** Lines compared in the same random worlds: how much one makes more than another, and whether that is more than chance. */
import { whyNotPairable } from '@loopwright/stats/worlds'
import { checkReplications, ONE_WORLD } from '../runs/asked.ts'
import { type CompareResult, comparisonOf, type LineAsked, linesAsked, type LineToCompare } from './comparison.ts'
import { workOfLines } from '../runs/openPool.ts'
import { inCommon, withRunner } from '../runs/runner.ts'
import type { StudyOptions } from '../runs/studyOptions.ts'

/** What a comparison is asked. */
export interface CompareRequest {
  /** per line, ≥ 2 */
  readonly replications: number
  /** of all differences together; default 0.95 */
  readonly level?: number
}

/** more would fill tables that nobody reads */
const LINES_MAX = 200

/**
 * Runs each line in the same worlds, and pairs them world by world.
 *
 * @param given  2 … 200, with one and the same window; the others are set beside the first
 * @throws RangeError  if there are fewer or more lines, fewer than 2 replications, or windows that differ: the first difference is named
 * @see Law, Simulation Modeling and Analysis (from memory): common random numbers; Bonferroni's inequality for all pairs at once
 * @example (await compareLines(['now', 'four'].map((name) => ({ name, line: name === 'now' ? line : withCarriers(line, 4), plan: null })), { replications: 5 }, { seed: '1', workers: 0 })).pairs[0].difference.mean // => 0
 */
export async function compareLines(given: readonly LineAsked[], request: CompareRequest, options: StudyOptions): Promise<CompareResult> {
  const lines = linesAsked(given)
  const { replications, level = 0.95 } = request
  const { seed } = options
  refuseComparison(lines, { seed, replications })
  const specs = lines.map(({ line }) => line)
  const ran = await withRunner(options, workOfLines(specs, replications), async (runner) => {
    runner.expect(specs.length * replications)
    return inCommon(await runner.run(specs, { from: 0, to: replications }))
  })
  return comparisonOf(lines, ran, { seed, replications, level })
}

/** @throws RangeError  with what cannot be compared */
export function refuseComparison(
  lines: readonly LineToCompare[],
  { seed, replications }: { readonly seed: string; readonly replications: number },
): void {
  if (lines.length < 2 || lines.length > LINES_MAX) throw new RangeError(`a comparison takes 2 to ${LINES_MAX} lines, not ${lines.length}`)
  checkReplications(replications, 'a comparison needs', 2, ONE_WORLD)
  const [first] = lines
  for (const other of lines.slice(1)) {
    const why = whyNotPairable({ seed, replications, ...first!.line.window }, { seed, replications, ...other.line.window })
    if (why !== null) throw new RangeError(`"${first!.name}" and "${other.name}": ${why}`)
  }
}
