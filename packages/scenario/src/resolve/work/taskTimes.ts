/** Times of a task by variant: one for all, means with one cv, or a distribution for each; and what options add. */
import { type Distribution, longerTimes } from '@loopwright/stats'
import type { Located } from '../../text/located.ts'
import * as say from '../../problems/messages.ts'
import { addAtKey, type Context, child, childNamed, entries, fraction, near, quantity, textOf } from '../context.ts'
import { readDistribution } from './distribution.ts'
import type { Products } from './products.ts'

type Times = (Distribution | null)[]

/** Times per variant as written, and the spread that a time made by an option alone gets. */
export function readTimes(context: Context, root: Located, at: Located, products: Products): { times: Times; cv: number } | undefined {
  if (at.kind === 'map' && at.entries.has('byVariant')) {
    const times = byVariant(context, child(at, 'byVariant')!, products.baseNames, (place) => readDistribution(context, place))
    return times === undefined ? undefined : { times, cv: 0 }
  }
  const titled = at.kind === 'map' ? child(at, 'time') : null
  if (at.kind === 'map' && titled === null && !at.entries.has('kind')) return byMean(context, root, at, products)
  const time = readDistribution(context, titled ?? at)
  return time === undefined ? undefined : { times: products.baseNames.map(() => time), cv: 0 }
}

function byMean(context: Context, root: Located, at: Located, products: Products): { times: Times; cv: number } | undefined {
  const meanAt = child(at, 'mean')
  const cvAt = child(at, 'cv') ?? child(child(child(root, 'defaults'), 'task'), 'cv')
  if (cvAt === null) context.report.add(at, say.cvMissing())
  const cv = fraction(context, cvAt, 'any')
  if (meanAt === null) return undefined
  const means: (number | null)[] | undefined =
    meanAt.kind === 'map'
      ? byVariant(context, meanAt, products.baseNames, (place) => quantity(context, place, 'duration', 'above zero'))
      : same(quantity(context, meanAt, 'duration', 'above zero'), products.baseNames.length)
  if (means === undefined || cv === undefined) return undefined
  return { times: means.map((mean) => (mean === null ? null : lognormal(mean, cv))), cv }
}

function same(value: number | undefined, count: number): number[] | undefined {
  return value === undefined ? undefined : Array.from({ length: count }, () => value)
}

const lognormal = (mean: number, cv: number): Distribution =>
  cv === 0 ? { kind: 'constant', value: mean } : { kind: 'lognormal', mean, cv }

/** One value per variant as written; "none" is null; a variant left out is a finding. */
function byVariant<T>(
  context: Context,
  at: Located,
  names: readonly string[],
  read: (place: Located) => T | undefined,
): (T | null)[] | undefined {
  if (at.kind !== 'map') return undefined
  const strangers = entries(at).filter((entry) => !names.includes(entry.key))
  for (const entry of strangers) addAtKey(context, entry, say.unknownVariant(entry.key, near(context, entry.key, names), names))
  const left = names.filter((name) => !at.entries.has(name))
  if (left.length > 0 && strangers.length === 0) context.report.add(at, say.timeMissing(left))
  const values = names.map((name) => {
    const place = childNamed(at, name)
    if (place === null) return undefined
    return textOf(place) === 'none' ? null : read(place)
  })
  return values.includes(undefined) ? undefined : (values as (T | null)[])
}

/** The same time with a constant on top; where there is no time it is all. */
export function longer(time: Distribution | null, extra: number, cv: number): Distribution {
  return time === null ? lognormal(extra, cv) : longerTimes(time, extra)
}
