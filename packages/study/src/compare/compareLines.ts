/** Lines compared in the same random worlds: how much one makes more than another, and whether that is more than chance. */
import type { LineSpec } from '@loopwright/line'
import {
  againstFirst,
  allPairs,
  type BinomialEstimate,
  type ChanceVerdict,
  type ComparedPair,
  type OutputInterval,
  whyNotPairable,
} from '@loopwright/stats'
import { meetsPlan, outputMean, planVerdict } from '../sweep/countStudy.ts'
import { ENGINE_VERSION } from '../runs/engineVersion.ts'
import { lineHasChance } from '../runs/lineChance.ts'
import { workOfLines } from '../runs/openPool.ts'
import { endedBy, inCommon, type LineRows, unitsOf, withRunner } from '../runs/runner.ts'
import type { StudyOptions } from '../runs/studyOptions.ts'

/** A line of a comparison, and its plan. */
export interface LineToCompare {
  readonly name: string
  readonly line: LineSpec
  /** units wanted per window; null: no plan */
  readonly plan: number | null
}

/** What a comparison is asked. */
export interface CompareRequest {
  /** per line, ≥ 2 */
  readonly replications: number
  /** of all differences together; default 0.95 */
  readonly level?: number
}

/** What lines make in the same worlds, and what each makes more than another; units per window. */
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
  /** of the replications that all lines have; first less second, units per window. Up to ten lines: all pairs; more: each with the first. Empty below 2 replications */
  readonly pairs: readonly ComparedPair[]
}

/** What one line of a comparison makes; units per window. */
export interface ComparedLine {
  readonly name: string
  readonly carriers: number
  readonly plan: number | null
  /** output per window, by replication */
  readonly units: readonly number[]
  /** false: nothing in the line is left to chance */
  readonly chance: boolean
  /** null below 2 replications, but for lines without chance */
  readonly mean: OutputInterval | null
  /** share of windows with output ≥ plan; null without a plan or a replication */
  readonly meetsPlan: BinomialEstimate | null
  /** whether nine of ten windows meet the plan; null as `meetsPlan` */
  readonly planVerdict: ChanceVerdict | null
  readonly gridlocks: number
}

/** more would fill tables that nobody reads */
const LINES_MAX = 200
/** with more lines each is set beside the first alone */
const ALL_PAIRS_MAX = 10

/**
 * Runs each line in the same worlds, and pairs them world by world.
 *
 * @param lines  2 … 200, with one and the same window; the others are set beside the first
 * @throws RangeError  if there are fewer or more lines, fewer than 2 replications, or windows that differ: the first difference is named
 * @see Law, Simulation Modeling and Analysis (from memory): common random numbers; Bonferroni's inequality for all pairs at once
 * @example (await compareLines(['now', 'four'].map((name) => ({ name, line: name === 'now' ? line : withCarriers(line, 4), plan: null })), { replications: 5 }, { seed: '1', workers: 0 })).pairs[0].difference.mean // => 0
 */
export async function compareLines(
  lines: readonly LineToCompare[],
  request: CompareRequest,
  options: StudyOptions,
): Promise<CompareResult> {
  const { replications, level = 0.95 } = request
  const { seed } = options
  refuse(lines, { seed, replications })
  const specs = lines.map(({ line }) => line)
  const ran = await withRunner(options, workOfLines(specs, replications), async (runner) => {
    runner.expect(specs.length * replications)
    return inCommon(await runner.run(specs, { from: 0, to: replications }))
  })
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
    pairs: units[0]!.length < 2 ? [] : lines.length <= ALL_PAIRS_MAX ? allPairs(units, level) : againstFirst(units, level),
  }
}

function refuse(lines: readonly LineToCompare[], { seed, replications }: { readonly seed: string; readonly replications: number }): void {
  if (lines.length < 2 || lines.length > LINES_MAX) throw new RangeError(`a comparison takes 2 to ${LINES_MAX} lines, not ${lines.length}`)
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
  const chance = lineHasChance(line)
  return {
    name,
    carriers: line.carriers.count,
    plan,
    units,
    chance,
    mean: outputMean(units, chance),
    meetsPlan: meetsPlan(units, plan),
    planVerdict: plan === null ? null : planVerdict(units, plan, chance),
    gridlocks: endedBy(rows, 'gridlock'),
  }
}
