/** The answer of a carrier sweep, by Procedure W. */
import { pairedLowerLimit } from '@loopwright/stats/worlds'
import { procedureW, type TestedCount } from '@loopwright/stats/procedures'
import type { NotConfirmed, SweepAnswer, SweepCount } from './sweepResult.ts'

/** One hundredth below the best is as good as the best; 95 of 100 such answers hold. */
export const WITHIN = 0.01
export const LEVEL = 0.95

/** What of a count the procedure looks at. */
export type Candidate = Pick<SweepCount, 'carriers' | 'units' | 'gridlocks'>

/** What an answer takes for near enough, and how sure it is. */
export interface Rule {
  /** share below the best that is near enough; default 0.01 */
  readonly within?: number
  /** confidence of the answer; default 0.95 */
  readonly level?: number
  /** chance of error spent on this look; default 1 − level */
  readonly alpha?: number
  /** nothing is left to chance: one replication tells all; default false */
  readonly certain?: boolean
}

/**
 * The smallest count whose mean is within a share of the best one's.
 *
 * From the reference downwards each next smaller count is tested against every other, replication by replication in the same random worlds:
 * the lower limit of the mean of D = Y_N − (1 − within)·Y_m, one-sided Student t, must not be below 0. The first that fails, or that stood still in
 * any replication, ends the walk; the last one before it is the answer.
 *
 * @param counts     ascending by carriers, each tried in the same worlds
 * @param reference  one of them, chosen without looking at these runs
 * @returns          null while a count has fewer than 2 replications
 * @see Berger, Multiparameter hypothesis testing and acceptance sampling (1982); Maurer, Hothorn & Lehmacher (1995), testing in a fixed order
 * @example sweepAnswer([{ carriers: 5, units: [90, 91], gridlocks: 0 }, { carriers: 6, units: [100, 101], gridlocks: 0 }], 6)?.chosen // => 6
 */
export function sweepAnswer(counts: readonly Candidate[], reference: number, rule: Rule = {}): SweepAnswer | null {
  const { within = WITHIN, level = LEVEL, alpha = 1 - level, certain = false } = rule
  const replications = Math.min(...counts.map((count) => count.units.length))
  if (counts.length === 0 || replications < (certain ? 1 : 2)) return null
  const common = counts.map((count) => ({
    ...count,
    units: certain ? [count.units[0]!, count.units[0]!] : count.units.slice(0, replications),
  }))
  const best = bestIndex(common)
  const { chosen, notConfirmed } = common.length === 1 ? alone(common[0]!) : walk(common, reference, within, alpha)
  return {
    within,
    level,
    reference,
    best: counts[best]!.carriers,
    chosen,
    notConfirmed,
    bestAtUpperEnd: best === counts.length - 1,
    chosenAtLowerEnd: chosen === counts[0]!.carriers,
    replications,
  }
}

type Walk = Pick<SweepAnswer, 'chosen' | 'notConfirmed'>

function walk(counts: readonly Candidate[], reference: number, within: number, alpha: number): Walk {
  const table = {
    seed: 'judged',
    counts: counts.map((count) => count.carriers),
    outputs: counts.map((count) => count.units),
    gridlocks: counts.map((count) => count.gridlocks),
  }
  if (counts.every((count) => count.units.every((units) => units === 0))) return { chosen: null, notConfirmed: null }
  const { answer, tested } = procedureW(table, reference, 'pilot', within, alpha)
  const last = tested.at(-1)!
  return { chosen: answer, notConfirmed: last.confirmed ? null : failed(counts, last, reference, within, alpha) }
}

function failed(counts: readonly Candidate[], tested: TestedCount, reference: number, within: number, alpha: number): NotConfirmed {
  const { carriers, lowerLimit, against } = tested
  const of = (number: number): Candidate => counts.find((count) => count.carriers === number)!
  const [units, best] = [of(carriers).units, of(reference).units]
  const over = pairedLowerLimit(
    units.map((made, j) => (1 - within) * best[j]! - made),
    1 - alpha,
  )
  return {
    carriers,
    reason: of(carriers).gridlocks > 0 ? 'gridlock' : 'may fall short',
    shortBy: Math.max(0, -lowerLimit),
    lowerLimit,
    against,
    shown: carriers !== reference && over.low > 0,
  }
}

/** The only count there is: nothing to compare it with. */
function alone({ carriers, units, gridlocks }: Candidate): Walk {
  if (gridlocks === 0) return { chosen: units.some((made) => made > 0) ? carriers : null, notConfirmed: null }
  return { chosen: null, notConfirmed: { carriers, reason: 'gridlock', shortBy: 0, lowerLimit: 0, against: carriers, shown: false } }
}

/** Place of the highest mean; of equals the smallest count. */
function bestIndex(counts: readonly Candidate[]): number {
  const sums = counts.map((count) => count.units.reduce((sum, units) => sum + units, 0))
  return sums.indexOf(Math.max(...sums))
}

/**
 * Where the walk begins: the count with the highest mean of those that never stood still; ties to the smallest.
 *
 * @param pilot  runs in worlds of their own; compared over the replications that all have
 */
export function pilotBest(pilot: readonly Candidate[]): number {
  const replications = Math.min(...pilot.map((count) => count.units.length))
  const moving = pilot.filter((count) => count.gridlocks === 0)
  const looked = (moving.length > 0 ? moving : pilot).map((count) => ({ ...count, units: count.units.slice(0, replications) }))
  return looked[bestIndex(looked)]!.carriers
}
