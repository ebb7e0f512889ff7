/** The first answer of a sweep, and the count that leads until it is done: for the progress only, never part of a result. */
import { meanOf } from '@loopwright/stats'
import type { CountStudy } from './countStudy.ts'

/** A first look at all counts, after so many runs of each, those of the pilot too: on the demo loop it names the count of 300 runs in 28 of 30 looks. */
const FIRST_REPLICATIONS = 10
/** of these in worlds of the pilot, which goes ahead three runs for each judged one */
const FIRST_PILOTS = 7

/** What the first runs say, without a promise: means of the same worlds for each count. */
export interface FirstAnswer {
  /** runs of each count */
  readonly replications: number
  /** count with the highest mean output of those that never stood still; of equals the smallest */
  readonly leading: number
  /** its mean output per window */
  readonly unitsMean: number
  /** the smallest count whose mean is within the share of the leading one's */
  readonly fewest: number
  /** share below the best that is near enough */
  readonly within: number
}

/** One number of carriers: its studies, those that go first first. */
export type Studies = readonly CountStudy[]

/**
 * The count that leads by the runs that are in.
 *
 * @param counts  ascending by carriers, none without a study
 * @returns       null while a count has no run
 */
export function leadingCount(counts: readonly Studies[]): number | null {
  const means = counts.map((studies) => {
    const runs = studies.reduce((sum, { tally }) => sum + tally.taken, 0)
    return studies.reduce((sum, { tally, layout }) => sum + tally.taken * tally.means[layout.units]!, 0) / runs
  })
  return means.some(Number.isNaN) ? null : counts[highest(counts, means)]![0]!.carriers
}

/**
 * The first answer, the same for any number of workers: of each count the first runs of the pilot, and as many judged ones as make up 10.
 *
 * @param counts  ascending by carriers, none without a study
 * @param wanted  by study, the runs that it will have in all
 * @param within  share below the best that is near enough
 * @returns       null while a count misses one of these runs, and where there are no more than these
 */
export function firstAnswer(counts: readonly Studies[], wanted: readonly number[], within: number): FirstAnswer | null {
  const looked = firstRuns(wanted)
  if (looked.at(-1)! >= wanted.at(-1)! || counts.some((studies) => studies.some((study, place) => study.tally.taken < looked[place]!)))
    return null
  const means = counts.map((studies) => meanOf(studies.flatMap(({ units }, place) => units.slice(0, looked[place]))))
  const best = highest(counts, means, looked)
  const fewest = counts.findIndex((studies, place) => moves(studies, looked) && means[place]! >= (1 - within) * means[best]!)
  return {
    replications: FIRST_REPLICATIONS,
    leading: counts[best]![0]!.carriers,
    unitsMean: means[best]!,
    fewest: counts[fewest < 0 ? best : fewest]![0]!.carriers,
    within,
  }
}

/**
 * The runs of each count that the first answer takes, by study.
 *
 * @param wanted  by study, the runs that it will have in all
 */
export function firstRuns(wanted: readonly number[]): number[] {
  const before = wanted.slice(0, -1).map((runs) => Math.min(runs, FIRST_PILOTS))
  return [...before, FIRST_REPLICATIONS - before.reduce((sum, runs) => sum + runs, 0)]
}

/** @param looked  by study, how many of its runs are looked at; default: all */
const moves = (studies: Studies, looked?: readonly number[]): boolean =>
  studies.every((study, place) => study.firstGridlock >= (looked?.[place] ?? study.tally.taken))

/** Place of the highest mean among the counts that never stood still, among all where each did; of equals the first. */
function highest(counts: readonly Studies[], means: readonly number[], looked?: readonly number[]): number {
  const moving = counts.map((studies) => moves(studies, looked))
  const candidates = moving.includes(true) ? means.map((units, place) => (moving[place] ? units : Number.NEGATIVE_INFINITY)) : means
  return candidates.indexOf(Math.max(...candidates))
}
