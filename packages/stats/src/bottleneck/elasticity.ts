import { type MeanInterval, meanInterval } from '../infer/meanInterval.ts'
import { notAShare, tooFew, unequalLength } from '../messages.ts'
import { needSample } from '../samples.ts'
import { StatisticsError } from '../statisticsError.ts'

/** Outputs of one replication after another, in the same worlds: as it is, times of one part shorter, times of it longer. */
export interface ScaledOutputs {
  readonly base: readonly number[]
  /** times × (1 − step) */
  readonly faster: readonly number[]
  /** times × (1 + step) */
  readonly slower: readonly number[]
}

/**
 * Elasticity of the output: per cent more output for one per cent less time at a part, as mean and interval over replications.
 *
 * @param step  share by which the times were scaled, 0.05 is usual
 * @throws StatisticsError E_TOO_FEW, E_NOT_A_NUMBER, E_UNEQUAL_LENGTH, E_DOMAIN; E_NO_SPREAD where a replication made nothing
 * @example elasticity({ base: [100, 100], faster: [104, 104], slower: [96, 96] }).mean // => 0.8
 */
export function elasticity({ base, faster, slower }: ScaledOutputs, step: number = 0.05, level: number = 0.95): MeanInterval {
  if (!(step > 0 && step < 1)) throw notAShare('The step', step)
  for (const [name, values] of [
    ['faster', faster],
    ['slower', slower],
  ] as const) {
    if (values.length !== base.length) throw unequalLength('The runs as they are', base.length, `the ${name} runs`, values.length)
    needSample('an elasticity', values, 'replication', 2)
  }
  needSample('an elasticity', base, 'replication', 2)
  const nothing = base.findIndex((value) => !(value > 0))
  if (nothing >= 0) {
    throw new StatisticsError(
      'E_NO_SPREAD',
      `Replication ${nothing} made ${base[nothing]}: an elasticity needs output in every replication; look at why it stopped.`,
    )
  }
  return meanInterval(
    base.map((value, j) => (faster[j]! - slower[j]!) / (2 * step * value)),
    level,
  )
}

/**
 * The same in closed form for constant times with one active limit, the slowest exchange: (S/T)/(1 − (step·S/T)²), T = move + stay + clear.
 *
 * @see MODEL.md §12
 * @example exchangeElasticity(20, 24, 0.05) // => 0.8347826086956522
 */
export function exchangeElasticity(staySeconds: number, exchangeSeconds: number, step: number = 0.05): number {
  if (!(staySeconds >= 0 && staySeconds <= exchangeSeconds && exchangeSeconds > 0)) {
    throw new StatisticsError(
      'E_DOMAIN',
      `A stay of ${staySeconds} s in an exchange of ${exchangeSeconds} s: the stay is a part of the exchange.`,
    )
  }
  const share = staySeconds / exchangeSeconds
  return share / (1 - (step * share) ** 2)
}

/**
 * Which part limits the output: the one with the largest elasticity, and every other whose interval overlaps its; names both then.
 *
 * @param elasticities  by part
 * @returns             indices, the largest first
 * @throws StatisticsError E_TOO_FEW
 * @example limitingParts([meanInterval([0.7, 0.72, 0.71]), meanInterval([0.1, 0.12, 0.09])]) // => [0]
 */
export function limitingParts(elasticities: readonly MeanInterval[]): number[] {
  if (elasticities.length === 0) throw tooFew('a bottleneck', 0, 'part', 1)
  const order = [...elasticities.keys()].sort((a, b) => elasticities[b]!.mean - elasticities[a]!.mean)
  const largest = elasticities[order[0]!]!
  return order.filter((i, rank) => rank === 0 || elasticities[i]!.high >= largest.low)
}
