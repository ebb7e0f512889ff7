import { sampleSkewness } from 'simple-statistics'
import { Tally } from '../accumulate/tally.ts'
import { unequalLength } from '../messages.ts'
import { needLevel, needSample } from '../samples.ts'
import { StatisticsError } from '../statisticsError.ts'
import { CONTROLS_MAX, type Control, type ControlledMean, controlVariate } from './controlVariate.ts'

/** A mean over independent replications with the luck of known draws taken out, where that is shown to help. */
export interface ShownMean {
  /** replications */
  readonly n: number
  readonly mean: number
  readonly level: number
  /** half of the interval; it lies as far to either side */
  readonly halfWidth: number
  readonly low: number
  readonly high: number
  /** names of the controls used, one to three */
  readonly controls: readonly string[]
  /** equal groups of consecutive replications whose means were set against those of the controls */
  readonly batches: number
  /** so many plain replications know the mean as well, > n; null: nothing is left to chance beside the controls */
  readonly worth: number | null
}

/** Replications from which a mean may be told with controls, and the least number of batches that Nelson gives. */
export const CONTROLS_FROM = 30
/** more batches than these bring hardly anything, and the means of fewer and larger ones are nearer to the normal shape */
const BATCHES_MAX = 60
/** of the variance of the plain mean: a gain that is smaller may be luck */
const SHOWN = 0.8
/** Cochran's rule for a mean of skewed values: so many of them for each square of the skewness */
const COCHRAN = 25
/** batches for each control of a set: with fewer their choice would flatter the interval (Harrell, Regression Modeling Strategies, 2001, from memory: 10 to 20 values) */
const BATCHES_PER_CONTROL = 20

/**
 * The mean by the best set of up to three controls, one for each 20 batches, or nothing where a gain is not shown: with fewer than 30 replications, with controls too skewed for their
 * number, or where the variance would not fall to four fifths.
 *
 * Replications are averaged in 30 to 60 equal batches where they can be, against the bias of a regression on values that are far from normal; of all sets the one
 * with the least variance to be expected, degrees of freedom lost included, is taken.
 *
 * @param values    one a replication
 * @param controls  as many values each; those that do not vary are left aside
 * @param level     above 0 and below 1
 * @throws StatisticsError E_NOT_A_NUMBER, E_UNEQUAL_LENGTH, E_DOMAIN
 * @see Lavenberg & Welch (1981), from memory: regression and loss factor; Bauer & Wilson, Control-variate selection criteria (1992), from memory: the set with the least variance to be expected
 * @see Nelson, Batch size effects on the efficiency of control variates in simulation (1989) and Control variate remedies (1990), from memory: 30 to 60 batches
 * @see Cochran, Sampling Techniques (1977), from memory: n > 25·skewness². The border of four fifths is our own
 * @example shownControls([1, 2, 3], [{ name: 'stops', values: [3, 2, 1], mean: 2 }]) // => null
 */
export function shownControls(values: readonly number[], controls: readonly Control[], level: number = 0.95): ShownMean | null {
  needLevel(level)
  const n = values.length
  needSample('a mean', values, 'replication', 0)
  for (const control of controls) {
    if (control.values.length !== n) throw unequalLength('The output', n, `the control "${control.name}"`, control.values.length)
    needSample(`the control "${control.name}"`, control.values, 'replication', 0)
  }
  if (n < CONTROLS_FROM) return null
  const batches = batchCount(n)
  const means = inBatches(values, batches)
  const fit = controls
    .map((control) => ({ ...control, values: inBatches(control.values, batches) }))
    .filter(({ values: all }) => isFit(all))
  const best = bestSet(means, fit, level)
  if (best === null || best.found.varianceShare >= SHOWN) return null
  const { estimate: mean, halfWidth, low, high, standardError } = best.found
  const worth = (Tally.of(values).sd! / standardError) ** 2
  if (worth <= n) return null
  return { n, mean, level, halfWidth, low, high, controls: best.names, batches, worth: standardError === 0 ? null : worth }
}

/** The most from 30 to 60 that divide n; n itself where it is below 60, or none does. */
function batchCount(n: number): number {
  for (let batches = n < BATCHES_MAX ? 0 : BATCHES_MAX; batches >= CONTROLS_FROM; batches--) if (n % batches === 0) return batches
  return n
}

function inBatches(values: readonly number[], batches: number): number[] {
  const size = values.length / batches
  if (size === 1) return [...values]
  return Array.from({ length: batches }, (_, batch) => Tally.of(values.slice(batch * size, (batch + 1) * size)).mean!)
}

/** It varies, and is not too skewed for so many. */
function isFit(values: readonly number[]): boolean {
  const { variance = 0, mean = 0 } = Tally.of(values)
  if (!(variance > (Number.EPSILON * mean) ** 2)) return false
  return values.length > COCHRAN * sampleSkewness([...values]) ** 2
}

function bestSet(
  values: readonly number[],
  controls: readonly Control[],
  level: number,
): { names: readonly string[]; found: ControlledMean } | null {
  let best: { names: readonly string[]; found: ControlledMean } | null = null
  const most = Math.min(CONTROLS_MAX, Math.floor(values.length / BATCHES_PER_CONTROL))
  for (const set of setsOf(controls, most)) {
    const found = orNull(() => controlVariate(values, set, level))
    if (found === null || (best !== null && found.varianceShare >= best.found.varianceShare)) continue
    best = { names: set.map(({ name }) => name), found }
  }
  return best
}

/** All sets of one to `most`, the smaller first. */
function setsOf(controls: readonly Control[], most: number): Control[][] {
  let last: Control[][] = [[]]
  const all: Control[][] = []
  for (let size = 1; size <= most; size++) {
    last = last.flatMap((set) => controls.slice(set.length === 0 ? 0 : controls.indexOf(set.at(-1)!) + 1).map((one) => [...set, one]))
    all.push(...last)
  }
  return all
}

/** Controls that move together are no set. */
function orNull(of: () => ControlledMean): ControlledMean | null {
  try {
    return of()
  } catch (error) {
    if (error instanceof StatisticsError && error.code === 'E_NO_SPREAD') return null
    throw error
  }
}
