/** A grid: every setting of several factors, all in the same random worlds; what each setting makes, what each factor does, and whether it depends on the others. */
import { completeLine, type GivenLine, type LineSpec } from '@loopwright/line'
import { type BinomialEstimate, type ChanceVerdict, type OutputInterval, type QuantileEstimate, quantileEstimate } from '@loopwright/stats'
import { type PairedDifference, pairedDifference, whyNotPairable } from '@loopwright/stats/worlds'
import { bestTable, type FactorialEffects, factorialEffects } from '@loopwright/stats/procedures'
import { checkPlan, checkReplications, ONE_WORLD } from '../runs/asked.ts'
import { meetsPlan, outputMean, planVerdict } from '../sweep/countStudy.ts'
import { ENGINE_VERSION } from '../runs/engineVersion.ts'
import { type Factor, factorial } from './factorial.ts'
import { lineHasChance } from '../runs/lineChance.ts'
import { workOfLines } from '../runs/openPool.ts'
import { endedBy, inCommon, type LineRows, type Runner, unitsOf, withRunner } from '../runs/runner.ts'
import type { StudyOptions } from '../runs/studyOptions.ts'

/** One setting, to be run. */
export interface GridLine {
  readonly line: LineSpec
  /** units wanted per window; null: no plan */
  readonly plan: number | null
}

/** As it is asked for: the line from code, or complete. */
export interface GridAsked {
  readonly line: GivenLine
  /** units wanted per window; default null: no plan */
  readonly plan?: number | null
}

function completed({ line, plan = null }: GridAsked): GridLine {
  checkPlan(plan)
  return { line: completeLine(line), plan }
}

/** What a grid is asked. */
export interface GridRequest {
  readonly factors: readonly Factor[]
  /** the line as it stands, which the settings are set beside: one of them, or run in addition. Default: the first setting */
  readonly base?: GridAsked
  /** per setting, ≥ 2 */
  readonly replications: number
  /** of all differences from the base together, and in the same way of all effects and of the settings against the best; default 0.95 */
  readonly level?: number
}

/** Every setting in the same worlds, the best, and what each factor does; units per window. */
export interface GridResult {
  readonly kind: 'grid'
  readonly engineVersion: string
  readonly seed: string
  /** asked for, per setting */
  readonly replications: number
  /** stopped before all were done; every setting then has replications 0 … n − 1, n the same for all */
  readonly partial: boolean
  readonly level: number
  readonly window: { readonly warmupSeconds: number; readonly endSeconds: number }
  readonly factors: readonly Factor[]
  /** every setting, the levels of the last factor fastest */
  readonly points: readonly GridPoint[]
  /** place in `points` of what the others are set beside; null: the line as it stands is none of them */
  readonly base: number | null
  /** the line as it stands, where it is none of the points */
  readonly outside: GridPoint | null
  /** place in `points`: greatest mean among those that never stood still; of equals the first. null: none, or fewer than 2 replications */
  readonly best: number | null
  /** places in `points` that cannot be told from the best (multiple comparisons with the best), itself among them */
  readonly maybeBest: readonly number[]
  /** places in `points` that are shown to make at least 99 % of the best */
  readonly nearBest: readonly number[]
  /** null below 2 replications */
  readonly effects: FactorialEffects | null
}

/** What one setting makes; units per window. */
export interface GridPoint {
  /** place of the level of each factor; empty for a line outside the grid */
  readonly levels: readonly number[]
  readonly carriers: number
  readonly plan: number | null
  /** output per window, by replication */
  readonly units: readonly number[]
  /** these are null below 2 replications */
  readonly mean: OutputInterval | null
  readonly p10: QuantileEstimate | null
  /** share of windows with output ≥ plan; null without a plan or a replication */
  readonly meetsPlan: BinomialEstimate | null
  /** whether nine of ten windows meet the plan, and how surely; null as `meetsPlan` */
  readonly planVerdict: ChanceVerdict | null
  /** replications that ended in gridlock, and out of products */
  readonly gridlocks: number
  readonly outOfProducts: number
  /** this setting less the base, units per window; null at the base itself */
  readonly toBase: PairedDifference | null
}

/** settings whose mean is this share of the best one's are near enough to choose among by other reasons */
const NEAR = 0.99
/** more would take hours, and fill a table that nobody reads */
export const GRID_POINTS_MAX = 500
/** replications after which a stop finds whole worlds: a few at first, so that an early stop finds something too */
const BLOCKS = [2, 5, 10]
const BLOCK = 10

/**
 * Runs every setting in the same worlds, and pairs them world by world.
 *
 * @param given  a full factorial of `request.factors`, the levels of the last factor fastest; all with one and the same window
 * @throws RangeError  if there are fewer than 2 settings, more than 500, not as many as the factors say, fewer than 2 replications, or windows that differ
 * @see Law, Simulation Modeling and Analysis (from memory): full factorials in common random numbers; Hsu, Multiple Comparisons (1996), for the best
 * @example (await runGrid([2, 3].map((count) => ({ line: withCarriers(line, count), plan: null })), { factors: [{ name: 'carriers', levels: ['2', '3'] }], replications: 5 }, { seed: '1', workers: 0 })).best // => 1
 */
export async function runGrid(given: readonly GridAsked[], request: GridRequest, options: StudyOptions): Promise<GridResult> {
  const points = given.map(completed)
  const base = request.base === undefined ? undefined : completed(request.base)
  const { replications, level = 0.95, factors } = request
  const { seed } = options
  refuse(points, { ...request, base }, seed)
  const settings = factorial(factors)
  const at = base === undefined ? 0 : points.findIndex((point) => sameLine(point, base!))
  const lines = (at < 0 ? [...points, base!] : points).map(({ line }) => line)
  const ran = await withRunner(options, workOfLines(lines, replications), (runner) => inBlocks(lines, replications, runner))
  const units = ran.map(unitsOf)
  const n = units[0]!.length
  const baseUnits = units[at < 0 ? points.length : at]!
  const each = 1 - (1 - level) / Math.max(1, points.length - (at < 0 ? 0 : 1))
  const told = points.map((point, index) => ({
    ...gridPoint(point, settings[index]!, ran[index]!),
    toBase: index === at || n < 2 ? null : pairedDifference(units[index]!, baseUnits, each),
  }))
  return {
    kind: 'grid',
    engineVersion: ENGINE_VERSION,
    seed,
    replications,
    partial: n < replications,
    level,
    window: points[0]!.line.window,
    factors,
    points: told,
    base: at < 0 ? null : at,
    outside: at < 0 ? { ...gridPoint(base!, [], ran.at(-1)!), toBase: null } : null,
    ...bestOf(told, level),
    effects:
      n < 2
        ? null
        : factorialEffects(
            factors.map(({ levels }) => levels.length),
            units.slice(0, points.length),
            level,
          ),
  }
}

function refuse(
  points: readonly GridLine[],
  { factors, replications, base }: Omit<GridRequest, 'base'> & { readonly base: GridLine | undefined },
  seed: string,
): void {
  const count = factors.reduce((product, { levels }) => product * levels.length, 1)
  if (count < 2) throw new RangeError('a grid needs at least two settings: give a factor two levels or more')
  if (count > GRID_POINTS_MAX) {
    const shape = factors.map(({ levels }) => levels.length).join(' × ')
    throw new RangeError(
      `a grid of ${shape} = ${count} settings is too large, ${count * replications} runs with ${replications} each: at most ${GRID_POINTS_MAX} settings; leave out levels or a factor`,
    )
  }
  if (points.length !== count) throw new RangeError(`the factors say ${count} settings, and ${points.length} are given`)
  checkReplications(replications, 'a grid needs', 2, ONE_WORLD)
  const first = points[0]!.line.window
  for (const { line } of base === undefined ? points : [...points, base]) {
    const why = whyNotPairable({ seed, replications, ...first }, { seed, replications, ...line.window })
    if (why !== null) throw new RangeError(`the settings of a grid count the same stretch of time: ${why}`)
  }
}

/**
 * How many lines a grid runs: its settings, and the line as it stands where it is none of them.
 *
 * @example gridLineCount([], undefined) // => 0
 */
export function gridLineCount(points: readonly GridLine[], base: GridLine | undefined): number {
  return points.length + (base === undefined || points.some((point) => sameLine(point, base)) ? 0 : 1)
}

const sameLine = (a: GridLine, b: GridLine): boolean => a.plan === b.plan && JSON.stringify(a.line) === JSON.stringify(b.line)

/** Block after block of worlds, so that a stop finds every setting with nearly as many replications as were paid for. */
async function inBlocks(lines: readonly LineSpec[], replications: number, runner: Runner): Promise<LineRows[]> {
  const rows: Float64Array[][] = lines.map(() => [])
  let layouts: LineRows['layout'][] = []
  for (let from = 0; from < replications; ) {
    const to = Math.min(replications, BLOCKS.find((end) => end > from) ?? from + BLOCK)
    runner.expect(lines.length * (replications - from))
    const ran = inCommon(await runner.run(lines, { from, to }))
    layouts = ran.map(({ layout }) => layout)
    for (const [index, each] of ran.entries()) rows[index]!.push(...each.rows)
    if (runner.stopped) break
    from = to
  }
  return rows.map((each, index) => ({ layout: layouts[index]!, rows: each }))
}

function gridPoint({ line, plan }: GridLine, levels: readonly number[], rows: LineRows): Omit<GridPoint, 'toBase'> {
  const units = unitsOf(rows)
  return {
    levels,
    carriers: line.carriers.count,
    plan,
    units,
    mean: outputMean(units, lineHasChance(line)),
    p10: units.length < 2 ? null : quantileEstimate(units, 0.1),
    meetsPlan: meetsPlan(units, plan),
    planVerdict: plan === null ? null : planVerdict(units, plan, lineHasChance(line)),
    gridlocks: endedBy(rows, 'gridlock'),
    outOfProducts: endedBy(rows, 'out of products'),
  }
}

/** The best, and what cannot be told from it or is shown to be near it; settings that stood still are no answer, whatever they made. */
function bestOf(points: readonly GridPoint[], level: number): Pick<GridResult, 'best' | 'maybeBest' | 'nearBest'> {
  const fit = [...points.keys()].filter((index) => points[index]!.mean !== null && points[index]!.gridlocks === 0)
  if (fit.length === 0) return { best: null, maybeBest: [], nearBest: [] }
  const meanOf = (index: number): number => points[index]!.mean!.mean
  const best = fit.reduce((most, index) => (meanOf(index) > meanOf(most) ? index : most))
  if (fit.length === 1) return { best, maybeBest: [best], nearBest: [best] }
  const { rows } = bestTable(
    fit.map((index) => points[index]!.units),
    1 - level,
  )
  return {
    best,
    maybeBest: fit.filter((_, place) => rows[place]!.maybeBest),
    nearBest: fit.filter((_, place) => rows[place]!.low >= -(1 - NEAR) * meanOf(best)),
  }
}
