/** A duration as written, phrase or map, to a `Distribution` in seconds. */
import { checkDistribution, type Distribution, type DistributionForm, distributionKinds, type FieldIs } from '@loopwright/stats'
import { lnGamma } from '@loopwright/stats/special'
import { timeReach } from '@loopwright/line/check'
import type { Located } from '../../text/located.ts'
import * as say from '../../problems/messages.ts'
import { cutsOf } from '../../schema/distribution.ts'
import { parsePhrase } from '../../text/phrase.ts'
import { booleanOf, type Context, child, childNamed, fraction, numberOf, quantity, textOf, fail } from '../context.ts'
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

/** A last look by the package that will draw from it. */
function checked(context: Context, at: Located, distribution: Distribution | undefined): Distribution | undefined {
  if (distribution === undefined) return undefined
  const [reason] = checkDistribution(distribution)
  if (reason === undefined) {
    const beyond = timeReach(distribution)
    return beyond === null ? distribution : fail(context, at, beyond)
  }
  const cut = /cut away|keep/.test(reason)
  return fail(context, at, cut ? say.limitsCutAll() : say.distributionRefused(reason))
}

/** `shift`, `min` and `max` beside a kind that has no limits of its own. */
function withLimits(context: Context, at: Located, base: Distribution): Distribution | undefined {
  if (base.kind === 'limited') return base
  const form = formOf(base.kind)!
  const shiftAt = child(at, 'shift')
  const minAt = cutsOf(form) === 'all' ? child(at, 'min') : null
  const maxAt = cutsOf(form) === 'all' ? child(at, 'max') : null
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

const formOf = (kind: string): DistributionForm | undefined => distributionKinds().find((form) => form.kind === kind)

/** How a field is read, by what it is; undefined where it is missing or wrong. */
const READ: { readonly [Is in FieldIs]: (context: Context, at: Located, name: string) => unknown } = {
  value: (context, at, name) => quantity(context, childNamed(at, name), 'duration', 'zero'),
  positive: (context, at, name) => quantity(context, childNamed(at, name), 'duration', 'above zero'),
  extra: (context, at, name) => (at.entries.has(name) ? quantity(context, childNamed(at, name), 'duration', 'zero') : 0),
  limit: (context, at, name) => (at.entries.has(name) ? quantity(context, childNamed(at, name), 'duration', 'zero') : null),
  values: (context, at) => times(context, at),
  share: (context, at, name) => fraction(context, childNamed(at, name), 'one'),
  ratio: (context, at, name) => fraction(context, childNamed(at, name), 'any'),
  number: (_, at, name) => numberOf(childNamed(at, name)) ?? undefined,
  numbers: (context, at, name) => weightsOf(context, childNamed(at, name)),
  flag: (_, at, name) => booleanOf(childNamed(at, name)) ?? false,
  distribution: (context, at, name) => readDistribution(context, childNamed(at, name)),
}

/** Kinds that a file may say in another way too. */
const OTHERWISE: Readonly<Record<string, (context: Context, at: Located) => Distribution | undefined>> = { lognormal, gamma, weibull }

function readKind(context: Context, at: Located, kind: string): Distribution | undefined {
  if (OTHERWISE[kind] !== undefined) return OTHERWISE[kind](context, at)
  const form = formOf(kind)
  if (form === undefined) return undefined
  const parts = Object.entries(form.fields).map(([name, [is]]) => [name, READ[is](context, at, name)] as const)
  if (parts.some(([, part]) => part === undefined)) return undefined
  const distribution = { kind, ...Object.fromEntries(parts) } as unknown as Distribution
  return inOrder(context, at, form, distribution) && sameLengths(context, at, form, distribution) ? distribution : undefined
}

/** Least, most frequent and greatest value rise, where a kind has them. */
function inOrder(context: Context, at: Located, { fields }: DistributionForm, distribution: Distribution): boolean {
  const names = ['min', 'mode', 'max'].filter((name) => fields[name] !== undefined)
  const ends = names.map((name) => distribution[name as keyof Distribution] as unknown as number | null)
  if (ends.length < 2 || ends.includes(null)) return true
  const numbers = ends as number[]
  if (numbers[0]! < numbers.at(-1)! && numbers.every((value, i) => i === 0 || numbers[i - 1]! <= value)) return true
  const said = names.length === 2 ? '"min" must be below "max"' : '"min", "mode" and "max" must rise'
  fail(context, childNamed(at, names[1]!)!, say.wrongOrder(said))
  return false
}

/** One bare number for each of the values. */
function sameLengths(context: Context, at: Located, { fields }: DistributionForm, distribution: Distribution): boolean {
  const lengthOf = (is: FieldIs): readonly [string, number] | undefined =>
    Object.entries(fields).flatMap(([name, field]) =>
      field[0] === is ? [[name, (distribution[name as keyof Distribution] as unknown as readonly number[]).length] as const] : [],
    )[0]
  const [values, numbers] = [lengthOf('values'), lengthOf('numbers')]
  if (values === undefined || numbers === undefined || values[1] === numbers[1]) return true
  fail(context, childNamed(at, numbers[0])!, say.listLengths(values[1], numbers[1]))
  return false
}

function weightsOf(context: Context, at: Located | null): number[] | undefined {
  const weights = at?.items.map(numberOf)
  if (at === null || weights === undefined || weights.includes(null)) return undefined
  const wrong = at.items.find((item) => numberOf(item)! < 0)
  if (wrong !== undefined) return fail(context, wrong, say.negative(wrong.source))
  return weights as number[]
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

function positive(context: Context, at: Located | null): number | undefined {
  const value = numberOf(at)
  if (at === null || value === null) return undefined
  if (value < 0) return fail(context, at, say.negative(at.source))
  if (value === 0) return fail(context, at, say.zero(at.source))
  return value
}
