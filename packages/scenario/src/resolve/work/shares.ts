/** Shares: percentages or whole weights beside the variants, shares of options, weights and sequences of a mix. */
import type { MixSpec } from '@loopwright/line'
import { complement, type Decimal, multiply, parseDecimal, toNumber } from '../../text/decimal.ts'
import type { Located } from '../../text/located.ts'
import * as say from '../../problems/messages.ts'
import { addAtKey, type Context, child, childNamed, entries, near, numberOf, percent, textOf } from '../context.ts'
import type { Option, Variant } from './variant.ts'

/** The share of a lone variant. */
export const ONE: Decimal = { digits: 1n, scale: 0 }

/** Percentages that sum to 100, or whole weights; never a mix. */
export function readShares(context: Context, at: Located): Decimal[] | null {
  const shares: (Decimal | undefined)[] = []
  const kinds = new Set<string>()
  for (const { value } of entries(at)) {
    const place = value.kind === 'map' ? child(value, 'share') : value
    const bare = numberOf(place)
    if (place?.kind === 'text') {
      kinds.add('percent')
      shares.push(percent(context, place))
    } else if (place !== null && bare !== null) {
      kinds.add('weight')
      if (bare < 0) context.report.add(place, say.negative(place.source))
      else if (!Number.isSafeInteger(bare)) context.report.add(place, say.shareNumber(place.source))
      shares.push(Number.isSafeInteger(bare) && bare >= 0 ? (parseDecimal(String(bare)) ?? undefined) : undefined)
    } else shares.push(undefined)
  }
  if (kinds.size > 1) {
    context.report.add(at, say.sharesMixed())
    return null
  }
  if (shares.includes(undefined)) return null
  const known = shares as Decimal[]
  if (kinds.has('percent')) {
    const sum = 100 * known.reduce((total, share) => total + toNumber(share), 0)
    if (Math.abs(sum - 100) > 0.05 + 1e-9) {
      context.report.add(at, say.sharesSum(String(Number(sum.toPrecision(6)))))
      return null
    }
  }
  return known
}

export function variantShares(
  context: Context,
  shares: readonly Decimal[],
  baseNames: readonly string[],
  options: readonly Option[],
  variants: readonly Variant[],
): Decimal[] | null {
  const optionShares = options.map((option) => readOptionShare(context, option, baseNames))
  if (optionShares.includes(null)) return null
  return variants.map((variant) => {
    let share = shares[variant.base] ?? ONE
    options.forEach((_, i) => {
      const one = optionShares[i]![variant.base]!
      share = multiply(share, variant.options.includes(i) ? one : complement(one))
    })
    return share
  })
}

function readOptionShare(context: Context, option: Option, baseNames: readonly string[]): Decimal[] | null {
  const at = child(option.at, 'share')
  if (at === null) return null
  if (at.kind === 'text') {
    const share = optionPercent(context, at)
    return share === undefined ? null : baseNames.map(() => share)
  }
  checkVariantKeys(context, at, baseNames)
  const shares = baseNames.map((name) => {
    const place = childNamed(at, name)
    return place === null ? undefined : optionPercent(context, place)
  })
  return shares.includes(undefined) ? null : (shares as Decimal[])
}

/** Every variant once, and nobody else. */
function checkVariantKeys(context: Context, at: Located, names: readonly string[]): void {
  const strangers = entries(at).filter((entry) => !names.includes(entry.key))
  for (const entry of strangers) addAtKey(context, entry, say.unknownVariant(entry.key, near(context, entry.key, names), names))
  const left = names.filter((name) => !at.entries.has(name))
  if (left.length > 0 && strangers.length === 0) context.report.add(at, say.shareMissing(left))
}

function optionPercent(context: Context, at: Located): Decimal | undefined {
  const share = percent(context, at)
  if (share === undefined || toNumber(share) <= 1) return share
  context.report.add(at, say.shareBeyond(String(at.value)))
  return undefined
}

export function sequence(context: Context, mixAt: Located, kind: 'pattern' | 'list', names: readonly string[]): MixSpec | null {
  const at = child(mixAt, 'sequence')
  if (at === null || at.kind !== 'list') return null
  if (at.items.length === 0) {
    context.report.add(at, say.listEmpty())
    return null
  }
  const found = at.items.map((item) => {
    const name = textOf(item)
    const index = name === null ? -1 : names.indexOf(name)
    if (name !== null && index < 0) context.report.add(item, say.unknownVariant(name, near(context, name, names), names))
    return index
  })
  return found.includes(-1) ? null : { kind, sequence: found }
}

export function weights(context: Context, mixAt: Located, kind: string, names: readonly string[]): MixSpec | null {
  const at = child(mixAt, 'weights')
  if (at === null || at.kind !== 'map') return null
  checkVariantKeys(context, at, names)
  const shares = names.map((name) => {
    const place = childNamed(at, name)
    const weight = numberOf(place)
    if (place === null || weight === null) return undefined
    if (weight < 0) context.report.add(place, say.negative(place.source))
    else if (kind === 'levelled' && !Number.isSafeInteger(weight)) context.report.add(place, say.weightsWhole())
    else return weight
    return undefined
  })
  if (shares.includes(undefined)) return null
  if (shares.every((share) => share === 0)) {
    context.report.add(at, say.sharesZero())
    return null
  }
  return { kind: kind === 'levelled' ? 'levelled' : 'random', shares: shares as number[] }
}
