/** A forecast with the doubt of its inputs: the line as it might have been measured, again and again, each in worlds of its own. */
import { completeLine, type GivenLine } from '@loopwright/line'
import { doubtShares, type VarianceSplit, varianceSplit } from '@loopwright/stats/fit'
import { meanOf } from '@loopwright/stats'
import { checkReplications } from '../runs/asked.ts'
import { workOfLines } from '../runs/openPool.ts'
import { withRunner } from '../runs/runner.ts'
import type { StudyOptions } from '../runs/studyOptions.ts'

/** What is asked. */
export interface DoubtRequest {
  /** two or more than there are inputs; 100 is usual */
  readonly redrawn: readonly RedrawnLine[]
  /** windows simulated of each redrawn line, 2 or more. Default: 2 */
  readonly replications?: number
}

/** The line with some inputs redrawn, as others might have been measured. */
export interface RedrawnLine {
  readonly line: GivenLine
  /** how far each input was moved: such as the logarithm of its mean over the measured one */
  readonly levels: readonly number[]
}

/** Output with and without the doubt of the inputs. */
export interface DoubtResult {
  readonly kind: 'doubt'
  readonly seed: string
  readonly draws: number
  readonly replications: number
  readonly partial: boolean
  /** units per window, inputs taken as exact: one for each world */
  readonly without: readonly number[]
  /** units per window by draw, then by world: the same worlds */
  readonly within: readonly (readonly number[])[]
  /** of the differences that the redrawn inputs make, in the same worlds; null: stopped too early */
  readonly split: VarianceSplit | null
  /** of single windows, by chance alone: mean variance within the draws; null: stopped too early */
  readonly chanceVariance: number | null
  /** variance of the mean output that each input adds, by straight lines; in the order of levels */
  readonly variances: readonly number[]
}

/**
 * Runs the line and its redrawn ones, each pair in the same worlds, each pair in worlds of its own.
 *
 * @throws RangeError  for fewer than 2 replications, or too few redrawn lines
 * @see Barton, Nelson & Xie, Quantifying input uncertainty via simulation confidence intervals (2014)
 * @example (await inputDoubt(line, { redrawn: [1, 2, 3].map(() => ({ line, levels: [0] })) }, { seed: '1', workers: 0 })).split.inputVariance // => 0
 */
export async function inputDoubt(
  given: GivenLine,
  { redrawn, replications = 2 }: DoubtRequest,
  options: StudyOptions,
): Promise<DoubtResult> {
  const line = completeLine(given)
  checkReplications(replications, 'the doubt of inputs needs, of each draw,', 2)
  const inputs = redrawn[0]?.levels.length ?? 0
  if (redrawn.length < inputs + 2)
    throw new RangeError(`the doubt of ${inputs} inputs takes ${inputs + 2} draws or more, not ${redrawn.length}`)
  const without: number[] = []
  const within: number[][] = []
  const differences: number[][] = []
  await withRunner(options, workOfLines([line, line], replications * redrawn.length), async (runner) => {
    runner.expect(2 * replications * redrawn.length)
    // some draws at once, since each has few runs; after a stop the first of them are whole
    const atOnce = Math.max(1, Math.ceil(runner.tasksAtOnce / (2 * replications)))
    for (let first = 0; first < redrawn.length && !runner.stopped; first += atOnce) {
      const some = redrawn.slice(first, first + atOnce)
      const worlds = some.map((_, index) => ({ from: (first + index) * replications, to: (first + index + 1) * replications }))
      const ran = await runner.run([...some.map(() => line), ...some.map((one) => completeLine(one.line))], [...worlds, ...worlds])
      const units = ran.map(({ rows, layout }) => rows.map((row) => row[layout.units]!))
      for (let draw = 0; draw < some.length; draw += 1) {
        const [plain, drawn] = [units[draw]!, units[some.length + draw]!]
        if (runner.stopped || plain.length < replications || drawn.length < replications) break
        without.push(...plain)
        within.push(drawn)
        differences.push(drawn.map((made, index) => made - plain[index]!))
      }
    }
  })
  const enough = differences.length >= inputs + 2
  const means = differences.map(meanOf)
  const shares = enough
    ? doubtShares(
        means,
        redrawn.slice(0, differences.length).map(({ levels }) => levels),
      )
    : []
  return {
    kind: 'doubt',
    seed: options.seed,
    draws: within.length,
    replications,
    partial: within.length < redrawn.length,
    without,
    within,
    split: enough ? varianceSplit(differences) : null,
    chanceVariance: enough ? varianceSplit(within).meanSquareWithin : null,
    variances: shares.map(({ variance }) => variance),
  }
}
