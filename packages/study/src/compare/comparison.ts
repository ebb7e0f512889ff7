/** What the runs of several lines in the same worlds say of them: nothing is run here. */
import { completeLine, type GivenLine, type LineSpec } from '@loopwright/line'
import type { BinomialEstimate, ChanceVerdict, OutputInterval } from '@loopwright/stats'
import { againstFirst, allPairs, type ComparedPair } from '@loopwright/stats/worlds'
import { meetsPlan, outputMean, planVerdict } from '../sweep/countStudy.ts'
import { checkPlan } from '../runs/asked.ts'
import { ENGINE_VERSION } from '../runs/engineVersion.ts'
import { lineHasChance } from '../runs/lineChance.ts'
import { endedBy, type LineRows, unitsOf } from '../runs/runner.ts'

/** A line of a comparison, and its plan. */
export interface LineToCompare {
  readonly name: string
  readonly line: LineSpec
  /** units wanted per window; null: no plan */
  readonly plan: number | null
}

/** As it is asked for: the line from code, or complete. */
export interface LineAsked {
  readonly name: string
  readonly line: GivenLine
  /** units wanted per window; default null: no plan */
  readonly plan?: number | null
}

/** @throws RangeError  if a plan is none */
export const linesAsked = (given: readonly LineAsked[]): LineToCompare[] =>
  given.map(({ name, line, plan = null }) => {
    checkPlan(plan)
    return { name, line: completeLine(line), plan }
  })

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
  /** replications that ended in gridlock, and out of products */
  readonly gridlocks: number
  readonly outOfProducts: number
}

/** with more lines each is set beside the first alone */
const ALL_PAIRS_MAX = 10

/**
 * The comparison of lines that have been run.
 *
 * @param ran      their rows, as many of each, in the order of the lines
 * @param request  what was asked for
 */
export function comparisonOf(
  lines: readonly LineToCompare[],
  ran: readonly LineRows[],
  { seed, replications, level }: { readonly seed: string; readonly replications: number; readonly level: number },
): CompareResult {
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
    outOfProducts: endedBy(rows, 'out of products'),
  }
}
