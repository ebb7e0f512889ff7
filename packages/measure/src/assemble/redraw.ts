/** Measured inputs as others might have been measured: weights of the Bayesian bootstrap for values, a gamma for rates, a Dirichlet for shares. */
import { type Distribution, distributionMean, meanOf, scaledTimes, type Stream } from '@loopwright/stats'
import { dirichletWeights, fitDuration, reweighted } from '@loopwright/stats/fit'
import { chiSquareQuantile, gammaQuantile } from '@loopwright/stats/special'
import type { MixStudy } from '../mix/mixStudy.ts'
import { STOPS_FEW, type StopStudy, type StopTimes } from '../stops/stopStudy.ts'
import { everyNth, type TaskTimes, USUAL_CV, VALUES_MAX } from '../times/timeStudy.ts'
import { streamOf } from '../values/streamOf.ts'

/** An input of which it is known how often it was measured. */
export interface DoubtedInput {
  /** such as "wire, small" */
  readonly name: string
  /** times, stops or units that it rests on */
  readonly n: number
  readonly what: 'time' | 'time between stops' | 'repair' | 'mix'
  /** degrees of freedom of Student's t that its mean is redrawn by; null: it is redrawn in another way */
  readonly freedom: number | null
}

/** A redrawn study, and how far each of its inputs was moved. */
export interface Redrawn<T> {
  readonly study: T
  readonly inputs: readonly DoubtedInput[]
  /** ln of the redrawn mean over the measured one */
  readonly levels: readonly number[]
}

/** fewer tell nothing of their own doubt: ± 10 % then, evenly (own rule, shown) */
const VALUES_MIN = 5
const EXPERT = 0.1

/**
 * Times redrawn: each task and variant by weights of its own.
 *
 * @see Rubin, The Bayesian bootstrap (1981)
 * @example redrawTimes([], '1', 0).levels // => []
 */
export function redrawTimes(studies: readonly TaskTimes[], seed: string, draw: number): Redrawn<TaskTimes[]> {
  const made = studies.map((one) => {
    const name = `${one.task}${one.variant === null ? '' : `, ${one.variant}`}`
    const uniform = streamOf(seed, draw, 'input', name)
    const freedom = one.stands === 'constant' ? null : freedomOf(one.values)
    const distribution = widened(redrawnTime(one, uniform), one.distribution, freedom, uniform)
    const level = Math.log(distributionMean(distribution) / distributionMean(one.distribution))
    return { study: { ...one, distribution }, name, freedom, level }
  })
  return {
    study: made.map(({ study }) => study),
    inputs: made.map(({ study, name, freedom }) => ({ name, n: study.n, what: 'time', freedom })),
    levels: made.map(({ level }) => level),
  }
}

/** Of the t by which the mean of values is redrawn; null: too few, which are moved evenly. */
const freedomOf = (values: readonly number[]): number | null => (values.length < VALUES_MIN ? null : values.length - 1)

/**
 * The Bayesian bootstrap alone is a little too sure of the mean of few values: its variance is s²/(n + 1), divisor n, and its tails are those of the normal.
 * Scaled so that the mean moves as by Student's t, s/√n and n − 1 degrees of freedom (own rule, by the coverage of the round trip).
 */
function widened(redrawn: Distribution, measured: Distribution, freedom: number | null, uniform: Stream): Distribution {
  if (freedom === null) return redrawn
  const level = Math.log(distributionMean(redrawn) / distributionMean(measured))
  const by = Math.sqrt((freedom + 2) / chiSquareQuantile(uniform(), freedom))
  return scaledTimes(redrawn, Math.exp((by - 1) * level))
}

function redrawnTime({ values: all, stands, choice, mean, distribution }: TaskTimes, uniform: Stream): Distribution {
  if (stands === 'constant') return distribution
  // of long tables fewer are weighted than there are, which makes them a little less sure
  const values = everyNth(all, VALUES_MAX)
  if (values.length < VALUES_MIN) return { kind: 'lognormal', mean: mean * (1 - EXPERT + 2 * EXPERT * uniform()), cv: USUAL_CV }
  const weights = dirichletWeights(values.length, uniform)
  if (stands === 'values') return reweighted(values, weights)
  if (stands === 'curve') {
    const { fit } = choice!.chosen!
    return fitDuration(values, fit.family, { from: 'given', seconds: fit.shift }, weights).distribution
  }
  // mean and spread: the same of the weighted values
  const weighted = values.reduce((sum, value, index) => sum + weights[index]! * value, 0)
  const variance = values.reduce((sum, value, index) => sum + weights[index]! * (value - weighted) ** 2, 0)
  return { kind: 'lognormal', mean: weighted, cv: Math.max(1e-3, Math.sqrt(variance * (values.length / (values.length - 1))) / weighted) }
}

/**
 * Stops redrawn: the mean time between by the gamma of a count, repairs like times.
 *
 * @example redrawStops(stopStudy([{ place: 'S3', cause: 'tool', start: 3600, end: 3900, line: 2 }], { from: 0, to: 36000 }), '1', 0).inputs.length // => 2
 */
export function redrawStops(study: StopStudy, seed: string, draw: number): Redrawn<StopStudy> {
  const inputs: DoubtedInput[] = []
  const levels: number[] = []
  const times = study.times.map((one): StopTimes => {
    const name = `${one.place} ${one.cause}${one.short ? ' short' : ''}`
    const uniform = streamOf(seed, draw, 'input', name)
    // a usual stop that stands in is doubted as one that was seen once
    const counted = one.n < STOPS_FEW ? 1 : one.n
    const before = distributionMean(one.after)
    const after = { kind: 'exponential', mean: (before * counted) / gammaQuantile(uniform(), counted) } as const
    const freedom = one.lasts.kind === 'constant' || one.n < STOPS_FEW ? null : freedomOf(one.repairs)
    const lasts = widened(redrawnRepair(one, freedom !== null, uniform), one.lasts, freedom, uniform)
    inputs.push(
      // a count is as uncertain as it is large: there is no spread to be known
      { name, n: one.n, what: 'time between stops', freedom: null },
      { name, n: one.repairs.length, what: 'repair', freedom },
    )
    levels.push(Math.log(after.mean / before), Math.log(distributionMean(lasts) / distributionMean(one.lasts)))
    return { ...one, after, lasts }
  })
  return { study: { ...study, times }, inputs, levels }
}

function redrawnRepair({ repairs: all, lasts, choice }: StopTimes, told: boolean, uniform: Stream): Distribution {
  if (lasts.kind === 'constant') return lasts
  if (!told) return scaledTimes(lasts, 1 - EXPERT + 2 * EXPERT * uniform())
  const repairs = everyNth(all, VALUES_MAX)
  const weights = dirichletWeights(repairs.length, uniform)
  if (choice?.chosen != null) return fitDuration(repairs, choice.chosen.fit.family, { from: 'given', seconds: 0 }, weights).distribution
  if (choice !== null) return reweighted(repairs, weights)
  // the mean counts what open ones have lasted so far: it moves as that of those that are over
  const plain = meanOf(repairs)
  return scaledTimes(lasts, repairs.reduce((sum, one, index) => sum + weights[index]! * one, 0) / plain)
}

/** of more products the mix is one input, moved with the share of the one ordered most */
const PRODUCTS_MAX = 8

/** whole weights of a redrawn mix add up to about this */
const MIX_WHOLE = 1000

/**
 * Shares redrawn: a Dirichlet on the units of each product with its options. Of three to eight products each but the one ordered most is an input of its own.
 *
 * @example redrawMix(mixStudy([{ product: 'small', options: [], units: 30, when: null, timed: false, line: 2 }]), '1', 0).study.products[0].share // => 1
 */
export function redrawMix(study: MixStudy, seed: string, draw: number): Redrawn<MixStudy> {
  const uniform = streamOf(seed, draw, 'input', 'mix')
  const gammas = study.variants.map(({ units }) => gammaQuantile(uniform(), units))
  const sum = gammas.reduce((all, one) => all + one, 0)
  const variants = study.variants.map((one, index) => ({
    ...one,
    units: Math.max(1, Math.round((MIX_WHOLE * gammas[index]!) / sum)),
    share: gammas[index]! / sum,
  }))
  const of = (product: string): number[] => variants.flatMap(({ name }, index) => (name.split(' + ')[0] === product ? [index] : []))
  const products = study.products.map((one) => {
    const own = of(one.name)
    return {
      ...one,
      units: own.reduce((all, index) => all + variants[index]!.units, 0),
      share: own.reduce((all, index) => all + variants[index]!.share, 0),
    }
  })
  const options = study.options.map((one) => ({
    ...one,
    byProduct: study.products.map(({ name }) => {
      const own = of(name)
      const all = own.reduce((total, index) => total + variants[index]!.share, 0)
      return (
        own
          .filter((index) => variants[index]!.name.split(' + ').includes(one.option))
          .reduce((total, index) => total + variants[index]!.share, 0) / all
      )
    }),
  }))
  const [heaviest, ...others] = study.products.toSorted((a, b) => b.units - a.units)
  // shares sum to 1: all but one of them tell the mix
  const told = others.length > 1 && others.length < PRODUCTS_MAX ? others : [heaviest!]
  return {
    study: { ...study, variants, products, options },
    inputs: told.map(({ name }) => ({ name: told.length === 1 ? 'mix' : `mix, ${name}`, n: study.units, what: 'mix', freedom: null })),
    levels: told.map((one) => Math.log(products.find(({ name }) => name === one.name)!.share / one.share)),
  }
}
