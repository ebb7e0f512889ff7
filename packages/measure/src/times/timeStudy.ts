/** A time study judged: for each task and variant how long, how surely, how it spreads, and what to simulate it with. */
import { type Distribution, type Stream, Tally } from '@loopwright/stats'
import { chooseDuration, type DurationChoice, fences, fitDuration, sampleQuantile } from '@loopwright/stats/fit'
import { streamOf } from '../values/streamOf.ts'
import { type Allowance, standardTime } from './allowance.ts'
import { byTask } from './byTask.ts'
import { onlyRises, type PeopleDiffer, peopleDiffer, type Rounding, roundingOf, type Trend, trendOf } from './checks.ts'
import { type Cycles, cyclesFor } from './cycles.ts'
import type { Observation } from './observation.ts'

/** How times are judged. */
export interface TimeStudyRequest {
  /** null: none, the times are those of the work alone */
  readonly allowance?: Allowance | null
  /** ratings of the table are used. Default: true */
  readonly rated?: boolean
  /** of the whole table: for all that are not rated. Default: 1 */
  readonly rating?: number
  /** the shortest time that the work can take at all, in seconds, by task: taken off before a curve is fitted. Default: none */
  readonly shortest?: Readonly<Record<string, number>>
  /** the measured values are simulated, and no curve. Default: false */
  readonly keepValues?: boolean
  /** how well the means shall be known. Default: 0.05 */
  readonly relative?: number
  /** samples of the bootstrap of each fit. Default: 999, fewer for long tables */
  readonly samples?: number
  /** Default: '1' */
  readonly seed?: string
}

/** Times of one task and one variant, in the order they were taken. */
export interface TaskTimes {
  readonly task: string
  /** null: the table tells no variants */
  readonly variant: string | null
  /** to be simulated: rated, with the allowance; seconds */
  readonly values: readonly number[]
  readonly observations: readonly Observation[]
  readonly n: number
  readonly mean: number
  /** null: one value */
  readonly sd: number | null
  /** standard deviation over mean */
  readonly cv: number | null
  readonly least: number
  readonly p10: number
  readonly median: number
  readonly p90: number
  readonly most: number
  readonly cycles: Cycles | null
  /** beyond the fences of Tukey: shown, never taken out */
  readonly outliers: Outliers | null
  readonly trend: Trend | null
  readonly people: PeopleDiffer | null
  readonly rounding: Rounding | null
  /** the values only rise, as those of a watch that is read and not stopped */
  readonly onlyRises: boolean
  /** null: too few values, or all equal */
  readonly choice: DurationChoice | null
  readonly distribution: Distribution
  /** what the distribution is: a curve that holds; the values themselves; one time; mean and spread of few values; the mean with the usual spread */
  readonly stands: 'curve' | 'values' | 'constant' | 'mean and spread' | 'mean alone'
}

/** Values that lie far from the others. */
export interface Outliers {
  readonly observations: readonly Observation[]
  readonly meanWithout: number
  readonly cvWithout: number
}

/** fewer tell no shape */
const CURVE_FROM = 20
/** fewer tell no spread */
const SPREAD_FROM = 5
/** of a skilled hand; common practice, no source */
export const USUAL_CV = 0.12
/** more values take long, and tell nothing better: of more every so manyth is kept */
export const VALUES_MAX = 2000
/** the same of the test of a curve, which refuses small misfits of more; the curve that holds is then fitted to all */
const TESTED_MAX = 600
/** draws of all bootstrap samples of one fit, about */
const DRAWS = 60_000

/**
 * Times by task and variant.
 *
 * @param observations  of one table or several
 * @param onTask        told the number judged and the number there are, before each
 * @example timeStudy(times.map((observedSeconds, index) => ({ task: 'wire', variant: null, operator: null, observedSeconds, rating: null, when: null, line: index + 2, place: '' })), { samples: 19 })[0].n // => 25
 */
export function timeStudy(
  observations: readonly Observation[],
  request: TimeStudyRequest = {},
  onTask: (done: number, all: number) => void = () => {},
): TaskTimes[] {
  return byTask(observations).map((group, index, groups) => {
    onTask(index, groups.length)
    return judged(inOrder(group), request)
  })
}

/** By their own times where all have one, else as they stand. */
function inOrder(group: readonly Observation[]): Observation[] {
  return group.every(({ when }) => when !== null) ? group.toSorted((a, b) => a.when! - b.when!) : [...group]
}

function judged(observations: readonly Observation[], request: TimeStudyRequest): TaskTimes {
  const { task, variant } = observations[0]!
  const { allowance = null, rated = true, rating = 1, relative = 0.05 } = request
  const values = observations.map((one) => standardTime(one.observedSeconds, (rated ? one.rating : null) ?? rating, allowance))
  const tally = Tally.of(values)
  const [mean, sd] = [tally.mean!, tally.sd ?? null]
  return {
    task,
    variant,
    values,
    observations,
    n: values.length,
    mean,
    sd,
    cv: sd === null ? null : sd / mean,
    least: values.reduce((least, value) => Math.min(least, value)),
    p10: sampleQuantile(values, 0.1),
    median: sampleQuantile(values, 0.5),
    p90: sampleQuantile(values, 0.9),
    most: values.reduce((most, value) => Math.max(most, value)),
    cycles: cyclesFor(values, relative),
    outliers: outliersOf(values, observations),
    trend: trendOf(values),
    people: peopleDiffer(
      values,
      observations.map(({ operator }) => operator),
    ),
    rounding: roundingOf(observations.map(({ observedSeconds }) => observedSeconds)),
    onlyRises: onlyRises(observations.map(({ observedSeconds }) => observedSeconds)),
    ...simulatedBy(task, variant, values, mean, sd, request),
  }
}

function outliersOf(values: readonly number[], observations: readonly Observation[]): Outliers | null {
  if (values.length < 8) return null
  const { flaggedRows } = fences(values)
  if (flaggedRows.length === 0) return null
  const flagged = new Set(flaggedRows)
  const left = Tally.of(values.filter((_, index) => !flagged.has(index + 1)))
  return {
    observations: flaggedRows.map((row) => observations[row - 1]!),
    meanWithout: left.mean!,
    cvWithout: left.sd! / left.mean!,
  }
}

function simulatedBy(
  task: string,
  variant: string | null,
  values: readonly number[],
  mean: number,
  sd: number | null,
  { shortest = {}, keepValues = false, samples, seed = '1' }: TimeStudyRequest,
): Pick<TaskTimes, 'choice' | 'distribution' | 'stands'> {
  const n = values.length
  if (n >= 2 && sd! <= 1e-9 * mean) return { choice: null, distribution: { kind: 'constant', value: mean }, stands: 'constant' }
  if (keepValues && n >= SPREAD_FROM)
    return { choice: null, distribution: { kind: 'empirical', values: everyNth(values, VALUES_MAX), interpolate: false }, stands: 'values' }
  if (n < SPREAD_FROM) return { choice: null, distribution: { kind: 'lognormal', mean, cv: USUAL_CV }, stands: 'mean alone' }
  if (n < CURVE_FROM) return { choice: null, distribution: { kind: 'lognormal', mean, cv: sd! / mean }, stands: 'mean and spread' }
  const shift = shortest[task] ?? null
  const usable = shift !== null && shift > 0 && shift < values.reduce((least, value) => Math.min(least, value)) ? shift : null
  const draws = samples ?? Math.max(99, Math.min(999, Math.floor(DRAWS / Math.min(n, TESTED_MAX))))
  const choice = chosenCurve(values, usable, streamOf(seed, 0, 'bootstrap', `${task} ${variant ?? ''}`), draws)
  return { choice, distribution: choice.distribution, stands: choice.chosen === null ? 'values' : 'curve' }
}

/** The curve of many values: chosen by some of them, then fitted to all; where none holds, values evenly taken out. */
export function chosenCurve(values: readonly number[], shift: number | null, uniform: Stream, samples: number): DurationChoice {
  const choice = chooseDuration(everyNth(values, TESTED_MAX), shift, uniform, samples)
  if (values.length <= TESTED_MAX) return choice
  if (choice.chosen === null) {
    return { ...choice, distribution: { kind: 'empirical', values: everyNth(values, VALUES_MAX), interpolate: false } }
  }
  const { family, shift: seconds } = choice.chosen.fit
  const fit = fitDuration(values, family, { from: 'given', seconds })
  return { ...choice, chosen: { ...choice.chosen, fit }, distribution: fit.distribution }
}

/**
 * Values evenly taken out of many, in their order; all of few.
 *
 * @example everyNth([1, 2, 3, 4, 5], 2) // => [1, 4]
 */
export function everyNth<T>(values: readonly T[], most: number): T[] {
  const step = Math.ceil(values.length / most)
  return step <= 1 ? [...values] : values.filter((_, index) => index % step === 0)
}
