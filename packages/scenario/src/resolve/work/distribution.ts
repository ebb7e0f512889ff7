/** A duration as written, phrase or map, to a `Distribution` in seconds. */
import { checkDistribution, type Distribution, lnGamma } from '@loopwright/stats'
import type { Located } from '../../text/located.ts'
import * as say from '../../problems/messages.ts'
import { parsePhrase } from '../../text/phrase.ts'
import { booleanOf, type Context, child, fraction, numberOf, quantity, textOf } from '../context.ts'
import { times, unitSeconds } from '../time/times.ts'

/**
 * @param words  texts that mean something of their own at this place, such as "derived"; they give undefined without a finding
 * @returns      undefined where the value is missing or wrong
 */
export function readDistribution(context: Context, at: Located | null, words: readonly string[] = []): Distribution | undefined {
  if (at === null) return undefined
  const text = textOf(at)
  if (text !== null) {
    if (words.includes(text)) return undefined
    if (text === 'none' || text === 'derived' || text === 'move') return fail(context, at, say.wordNotHere(text))
    const outcome = parsePhrase(text)
    if (outcome.fault === null) return checked(context, at, outcome.value)
    context.report.add(at, outcome.fault.sentence, outcome.fault.start, outcome.fault.length)
    return undefined
  }
  if (at.kind !== 'map') return undefined
  const kind = textOf(child(at, 'kind'))
  const base = kind === null ? undefined : readKind(context, at, kind)
  if (base === undefined) return undefined
  return checked(context, at, withLimits(context, at, base) ?? undefined)
}

function fail(context: Context, at: Located, sentence: say.Sentence): undefined {
  context.report.add(at, sentence)
  return undefined
}

/** A last look by the package that will draw from it. */
function checked(context: Context, at: Located, distribution: Distribution | undefined): Distribution | undefined {
  if (distribution === undefined) return undefined
  const [reason] = checkDistribution(distribution)
  if (reason === undefined) return distribution
  const cut = /cut away|keep/.test(reason)
  return fail(context, at, cut ? say.limitsCutAll() : say.distributionRefused(reason))
}

const OWN_LIMITS = new Set(['uniform', 'triangular', 'pert', 'limited', 'occasional', 'constant', 'replay'])

/** `shift`, `min` and `max` beside a kind that has no limits of its own. */
function withLimits(context: Context, at: Located, base: Distribution): Distribution | undefined {
  if (base.kind === 'limited') return base
  const shiftAt = child(at, 'shift')
  const minAt = OWN_LIMITS.has(base.kind) ? null : child(at, 'min')
  const maxAt = OWN_LIMITS.has(base.kind) ? null : child(at, 'max')
  if (shiftAt === null && minAt === null && maxAt === null) return base
  return limit(context, base, shiftAt, minAt, maxAt)
}

function limit(
  context: Context,
  of: Distribution,
  shiftAt: Located | null,
  minAt: Located | null,
  maxAt: Located | null,
): Distribution | undefined {
  const shift = shiftAt === null ? 0 : quantity(context, shiftAt, 'duration', 'zero')
  const min = minAt === null ? null : quantity(context, minAt, 'duration', 'zero')
  const max = maxAt === null ? null : quantity(context, maxAt, 'duration', 'zero')
  if (shift === undefined || min === undefined || max === undefined) return undefined
  if (min !== null && max !== null && !(min < max)) return fail(context, maxAt!, say.wrongOrder('"min" must be below "max"'))
  return { kind: 'limited', of, shift, min, max }
}

function readKind(context: Context, at: Located, kind: string): Distribution | undefined {
  const time = (key: string, least: 'zero' | 'above zero' = 'zero') => quantity(context, child(at, key), 'duration', least)
  switch (kind) {
    case 'constant': {
      const value = time('value')
      return value === undefined ? undefined : { kind, value }
    }
    case 'uniform': {
      const min = time('min')
      const max = time('max')
      if (min === undefined || max === undefined) return undefined
      if (!(min < max)) return fail(context, child(at, 'max')!, say.wrongOrder('"min" must be below "max"'))
      return { kind, min, max }
    }
    case 'triangular':
    case 'pert': {
      const min = time('min')
      const mode = time('mode')
      const max = time('max')
      if (min === undefined || mode === undefined || max === undefined) return undefined
      if (!(min <= mode && mode <= max && min < max))
        return fail(context, child(at, 'mode')!, say.wrongOrder('"min", "mode" and "max" must rise'))
      return { kind, min, mode, max }
    }
    case 'exponential': {
      const mean = time('mean', 'above zero')
      return mean === undefined ? undefined : { kind, mean }
    }
    case 'lognormal':
      return lognormal(context, at)
    case 'gamma':
      return gamma(context, at)
    case 'weibull':
      return weibull(context, at)
    case 'empirical': {
      const values = times(context, at)
      return values === undefined ? undefined : { kind, values, interpolate: booleanOf(child(at, 'interpolate')) ?? false }
    }
    case 'replay': {
      const values = times(context, at)
      return values === undefined ? undefined : { kind, values }
    }
    case 'discrete':
      return discrete(context, at)
    case 'occasional': {
      const base = time('base')
      const probability = fraction(context, child(at, 'probability'), 'one')
      const of = readDistribution(context, child(at, 'of'))
      return base === undefined || probability === undefined || of === undefined ? undefined : { kind, base, probability, of }
    }
    case 'limited': {
      const of = readDistribution(context, child(at, 'of'))
      return of === undefined ? undefined : limit(context, of, child(at, 'shift'), child(at, 'min'), child(at, 'max'))
    }
    default:
      return undefined
  }
}

/** True where exactly one of two sets of keys is there, whole. */
function oneForm(
  context: Context,
  at: Located,
  kind: string,
  first: readonly string[],
  second: readonly string[],
  names: readonly string[],
): 'first' | 'second' | null {
  const has = (key: string): boolean => at.entries.has(key)
  if (first.every(has) && !second.some(has)) return 'first'
  if (second.every(has) && !first.some(has)) return 'second'
  context.report.add(child(at, 'kind') ?? at, say.eitherParameters(kind, names))
  return null
}

function lognormal(context: Context, at: Located): Distribution | undefined {
  const form = oneForm(context, at, 'lognormal', ['mean', 'cv'], ['mu', 'sigma', 'unit'], ['mean and cv', 'mu, sigma and unit'])
  if (form === 'first') return byMean(context, at, 'lognormal')
  if (form === null) return undefined
  const mu = numberOf(child(at, 'mu'))
  const sigma = positive(context, child(at, 'sigma'))
  const unit = unitSeconds(at)
  if (mu === null || sigma === undefined || unit === undefined) return undefined
  return { kind: 'lognormal', mean: Math.exp(mu + sigma ** 2 / 2) * unit, cv: Math.sqrt(Math.expm1(sigma ** 2)) }
}

function gamma(context: Context, at: Located): Distribution | undefined {
  const form = oneForm(context, at, 'gamma', ['mean', 'cv'], ['shape', 'scale'], ['mean and cv', 'shape and scale'])
  if (form === 'first') return byMean(context, at, 'gamma')
  if (form === null) return undefined
  const shape = positive(context, child(at, 'shape'))
  const scale = quantity(context, child(at, 'scale'), 'duration', 'above zero')
  return shape === undefined || scale === undefined ? undefined : { kind: 'gamma', mean: shape * scale, cv: 1 / Math.sqrt(shape) }
}

function byMean(context: Context, at: Located, kind: 'lognormal' | 'gamma'): Distribution | undefined {
  const mean = quantity(context, child(at, 'mean'), 'duration', 'above zero')
  const cv = fraction(context, child(at, 'cv'), 'any')
  if (mean === undefined || cv === undefined) return undefined
  return cv === 0 ? { kind: 'constant', value: mean } : { kind, mean, cv }
}

/** Mean of a Weibull: scale · Γ(1 + 1/shape). */
function weibull(context: Context, at: Located): Distribution | undefined {
  const form = oneForm(context, at, 'weibull', ['scale'], ['mean'], ['shape and scale', 'shape and mean'])
  const shape = positive(context, child(at, 'shape'))
  if (form === null || shape === undefined) return undefined
  const given = quantity(context, child(at, form === 'first' ? 'scale' : 'mean'), 'duration', 'above zero')
  if (given === undefined) return undefined
  return { kind: 'weibull', shape, scale: form === 'first' ? given : given / Math.exp(lnGamma(1 + 1 / shape)) }
}

function discrete(context: Context, at: Located): Distribution | undefined {
  const values = times(context, at)
  const weightsAt = child(at, 'weights')
  if (values === undefined || weightsAt === null) return undefined
  const weights = weightsAt.items.map(numberOf)
  if (weights.includes(null)) return undefined
  const wrong = weightsAt.items.find((item) => numberOf(item)! < 0)
  if (wrong !== undefined) return fail(context, wrong, say.negative(wrong.source))
  if (weights.length !== values.length) return fail(context, weightsAt, say.listLengths(values.length, weights.length))
  return { kind: 'discrete', values, weights: weights as number[] }
}

function positive(context: Context, at: Located | null): number | undefined {
  const value = numberOf(at)
  if (at === null || value === null) return undefined
  if (value < 0) return fail(context, at, say.negative(at.source))
  if (value === 0) return fail(context, at, say.zero(at.source))
  return value
}
