import { Tally } from '../accumulate/tally.ts'
import { notACount, tooFew, unequalLength } from '../messages.ts'
import { needLevel, needSample } from '../samples.ts'
import { type OutputInterval, outputInterval } from './outputInterval.ts'
import { type PairedDifference, pairedDifference } from './pairedDifference.ts'

/** What one factor does, averaged over all settings of the other factors, each with the same weight. */
export interface MainEffect {
  /** place among the factors, from 0 */
  readonly factor: number
  /** by level */
  readonly means: readonly OutputInterval[]
  /** the level that gives least, and the one that gives most; of equals the one listed first. The same where all are equal */
  readonly least: number
  readonly most: number
  /** most less least, in the same worlds; null: the factor has one level */
  readonly span: PairedDifference | null
}

/** How much the effect of one factor depends on the level of another: the two pairs of levels at which it does so most. Averaged over further factors. */
export interface Interaction {
  /** places among the factors; first below second */
  readonly first: number
  readonly second: number
  /** levels of the first factor; from below to */
  readonly from: number
  readonly to: number
  /** levels of the second factor; here below there */
  readonly here: number
  readonly there: number
  /** what the step from … to brings, mean, at each of the two */
  readonly gainHere: number
  readonly gainThere: number
  /** gain there less gain here, in the same worlds */
  readonly difference: PairedDifference
}

/** What each factor does on average, and each two together. */
export interface FactorialEffects {
  readonly n: number
  /** of all main effects together, and of all interactions together */
  readonly level: number
  readonly main: readonly MainEffect[]
  /** one for each two factors that have two levels or more */
  readonly interactions: readonly Interaction[]
}

/**
 * Main effects and interactions of a full factorial whose points all ran in the same worlds.
 *
 * Each effect is a contrast of every world by itself, so that what the worlds have in common drops out: mean ± t·sd/√n over worlds. The levels of an
 * effect are chosen after the data were seen; the intervals allow for it: Bonferroni over all pairs of levels, and for interactions over all pairs of pairs.
 *
 * @param levels   how many each factor has, each from 1
 * @param outputs  by point, the levels of the last factor fastest; then by replication, two or more
 * @param level    of all main effects together, and of all interactions together
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_UNEQUAL_LENGTH, E_DOMAIN
 * @see Box, Hunter & Hunter, Statistics for Experimenters (1978), chapter 10 (from memory); Law, Simulation Modeling and Analysis (from memory): common random numbers
 * @example factorialEffects([2], [[1, 2], [4, 5]]).main[0].span.mean // => 3
 */
export function factorialEffects(
  levels: readonly number[],
  outputs: readonly (readonly number[])[],
  level: number = 0.95,
): FactorialEffects {
  needLevel(level)
  for (const count of levels) if (!(Number.isInteger(count) && count >= 1)) throw notACount('The number of levels', count, 1)
  const points = levels.reduce((product, count) => product * count, 1)
  if (levels.length === 0) throw tooFew('effects', 0, 'factor', 1)
  if (outputs.length !== points) throw unequalLength('The factorial', points, 'the list of outputs', outputs.length)
  const n = outputs[0]!.length
  outputs.forEach((values, index) => {
    if (values.length !== n) throw unequalLength('Point 1', n, `point ${index + 1}`, values.length)
    needSample('an effect', values, 'replication', 2)
  })
  const pairs = levels.reduce((sum, count) => sum + choose2(count), 0)
  const main = levels.map((_, factor) => mainEffect(levels, outputs, factor, 1 - (1 - level) / Math.max(1, pairs)))
  const varied = [...levels.keys()].filter((factor) => levels[factor]! >= 2)
  const both = varied.flatMap((first, place) => varied.slice(place + 1).map((second) => [first, second] as const))
  const tetrads = both.reduce((sum, [first, second]) => sum + choose2(levels[first]!) * choose2(levels[second]!), 0)
  return {
    n,
    level,
    main,
    interactions: both.map(([first, second]) => interaction(levels, outputs, first, second, 1 - (1 - level) / tetrads)),
  }
}

const choose2 = (count: number): number => (count * (count - 1)) / 2

function mainEffect(levels: readonly number[], outputs: readonly (readonly number[])[], factor: number, level: number): MainEffect {
  const share = outputs.length / levels[factor]!
  const averages = sums(levels, outputs, [factor]).map((world) => world.map((sum) => sum / share))
  const means = averages.map((each) => outputInterval(each))
  let [least, most] = [0, 0]
  for (const [index, { mean }] of means.entries()) {
    if (mean < means[least]!.mean) least = index
    if (mean > means[most]!.mean) most = index
  }
  const span = means.length < 2 ? null : pairedDifference(averages[most]!, averages[least]!, level)
  return { factor, means, least, most, span }
}

function interaction(
  levels: readonly number[],
  outputs: readonly (readonly number[])[],
  first: number,
  second: number,
  level: number,
): Interaction {
  const [rows, columns] = [levels[first]!, levels[second]!]
  const share = outputs.length / (rows * columns)
  const cells = sums(levels, outputs, [first, second])
  const means = cells.map((world) => Tally.of(world).mean!)
  const gain = (from: number, to: number, at: number): number => means[to * columns + at]! - means[from * columns + at]!
  let best = { from: 0, to: 1, here: 0, there: 1, size: -1 }
  for (let from = 0; from < rows; from++) {
    for (let to = from + 1; to < rows; to++) {
      for (let here = 0; here < columns; here++) {
        for (let there = here + 1; there < columns; there++) {
          const size = Math.abs(gain(from, to, there) - gain(from, to, here))
          if (size > best.size) best = { from, to, here, there, size }
        }
      }
    }
  }
  const { from, to, here, there } = best
  /** by world */
  const gains = (at: number): number[] => cells[to * columns + at]!.map((sum, j) => (sum - cells[from * columns + at]![j]!) / share)
  return {
    first,
    second,
    from,
    to,
    here,
    there,
    gainHere: Tally.of(gains(here)).mean!,
    gainThere: Tally.of(gains(there)).mean!,
    difference: pairedDifference(gains(there), gains(here), level),
  }
}

/** Sums over all other factors, by level of those kept (the last one fastest), then by world: whole units stay whole, so that no rounding looks like an effect. */
function sums(levels: readonly number[], outputs: readonly (readonly number[])[], kept: readonly number[]): number[][] {
  const size = kept.reduce((product, factor) => product * levels[factor]!, 1)
  const found = Array.from({ length: size }, () => outputs[0]!.map(() => 0))
  const strides = levels.map((_, factor) => levels.slice(factor + 1).reduce((product, count) => product * count, 1))
  outputs.forEach((values, point) => {
    const place = kept.reduce((at, factor) => at * levels[factor]! + (Math.floor(point / strides[factor]!) % levels[factor]!), 0)
    const into = found[place]!
    for (let j = 0; j < values.length; j++) into[j]! += values[j]!
  })
  return found
}
