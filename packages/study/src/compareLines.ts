/** Lines compared in the same random worlds: how much one makes more than another, and whether that is more than chance. */
import type { LineSpec } from '@loopwright/line'
import {
  allPairs,
  type BinomialEstimate,
  binomialEstimate,
  type ComparedPair,
  type MeanInterval,
  meanInterval,
  whyNotPairable,
} from '@loopwright/stats'
import { ENGINE_VERSION } from './engineVersion.ts'
import { inCommon, type LineRows, type Runner, unitsOf } from './runner.ts'
import { END_REASONS } from './runRow.ts'

export interface LineToCompare {
  readonly name: string
  readonly line: LineSpec
  /** units wanted per window; null: no plan */
  readonly plan: number | null
}

export interface CompareRequest {
  readonly seed: string
  /** per line, ≥ 2 */
  readonly replications: number
  /** of all differences together; default 0.95 */
  readonly level?: number
}

export interface CompareResult {
  readonly kind: 'comparison'
  readonly engineVersion: string
  readonly seed: string
  /** asked for, per line */
  readonly replications: number
  /** stopped before all were done */
  readonly partial: boolean
  /** of all differences together */
  readonly level: number
  readonly window: { readonly warmupSeconds: number; readonly endSeconds: number }
  readonly lines: readonly ComparedLine[]
  /** all pairs, of the replications that all lines have; first less second, units per window. Empty below 2 replications */
  readonly pairs: readonly ComparedPair[]
}

export interface ComparedLine {
  readonly name: string
  readonly carriers: number
  readonly plan: number | null
  /** output per window, by replication */
  readonly units: readonly number[]
  /** null below 2 replications */
  readonly mean: MeanInterval | null
  /** share of windows with output ≥ plan; null without a plan or a replication */
  readonly meetsPlan: BinomialEstimate | null
  readonly gridlocks: number
}

/**
 * Runs each line in the same worlds, and pairs them world by world.
 *
 * @param lines  2 … 10, with one and the same window
 * @throws RangeError  if there are fewer or more lines, fewer than 2 replications, or windows that differ: the first difference is named
 * @see Law, Simulation Modeling and Analysis (from memory): common random numbers; Bonferroni's inequality for all pairs at once
 */
export async function compareLines(lines: readonly LineToCompare[], request: CompareRequest, runner: Runner): Promise<CompareResult> {
  const { seed, replications, level = 0.95 } = request
  refuse(lines, request)
  runner.expect(lines.length * replications)
  const ran = inCommon(
    await runner.run(
      lines.map(({ line }) => line),
      { seed, from: 0, to: replications },
    ),
  )
  const units = ran.map(unitsOf)
  return {
    kind: 'comparison',
    engineVersion: ENGINE_VERSION,
    seed,
    replications,
    partial: units[0]!.length < replications,
    level,
    window: lines[0]!.line.window,
    lines: lines.map((line, index) => compared(line, ran[index]!)),
    pairs: units[0]!.length < 2 ? [] : allPairs(units, level),
  }
}

function refuse(lines: readonly LineToCompare[], { seed, replications }: CompareRequest): void {
  if (lines.length < 2 || lines.length > 10) throw new RangeError(`a comparison takes 2 to 10 lines, not ${lines.length}`)
  if (!Number.isInteger(replications) || replications < 2) {
    throw new RangeError(`a comparison needs at least 2 replications, not ${replications}: one world says nothing about chance`)
  }
  const [first] = lines
  for (const other of lines.slice(1)) {
    const why = whyNotPairable({ seed, replications, ...first!.line.window }, { seed, replications, ...other.line.window })
    if (why !== null) throw new RangeError(`"${first!.name}" and "${other.name}": ${why}`)
  }
}

function compared({ name, line, plan }: LineToCompare, rows: LineRows): ComparedLine {
  const units = unitsOf(rows)
  const met = plan === null ? 0 : units.filter((made) => made >= plan).length
  return {
    name,
    carriers: line.carriers.count,
    plan,
    units,
    mean: units.length < 2 ? null : meanInterval(units),
    meetsPlan: plan === null || units.length === 0 ? null : binomialEstimate(met, units.length),
    gridlocks: rows.rows.filter((row) => row[rows.layout.end] === END_REASONS.indexOf('gridlock')).length,
  }
}
