/** Products: variants with shares, options that expand them, and the mix. Shares are multiplied exactly and rounded once. */
import type { MixSpec } from '@loopwright/line'
import { complement, type Decimal, multiply, parseDecimal, toNumber, wholeProportion } from '../decimal.ts'
import * as say from '../messages.ts'
import { nearest } from '../nearest.ts'
import type { Located } from '../source.ts'
import { addAtKey, type Context, checkName, child, entries, numberOf, percent, quantity, textOf } from './context.ts'

export interface Variant {
  readonly name: string
  /** index of the variant as written */
  readonly base: number
  /** indices of its options */
  readonly options: readonly number[]
}

export interface Option {
  readonly name: string
  readonly at: Located
  /** extra seconds by task; undefined where the time is wrong */
  readonly adds: ReadonlyMap<string, number | undefined>
}

export interface Products {
  readonly baseNames: readonly string[]
  readonly options: readonly Option[]
  readonly variants: readonly Variant[]
  readonly mix: MixSpec | null
}

const VARIANTS_MAX = 1000
const ONE: Decimal = { digits: 1n, scale: 0 }

export function readProducts(context: Context, root: Located): Products {
  const at = child(root, 'products')
  const variantsAt = child(at, 'variants')
  const baseNames = readNames(context, variantsAt)
  const options = entries(child(at, 'options')).map((entry) => {
    checkName(context, entry.key, (sentence) => addAtKey(context, entry, sentence))
    const adds = entries(child(entry.value, 'adds')).map((add) => [add.key, quantity(context, add.value, 'duration', 'zero')] as const)
    return { name: entry.key, at: entry.value, adds: new Map(adds) }
  })
  if (variantsAt === null) context.origins.set('products.variants', 'default')
  const count = baseNames.length * 2 ** options.length
  if (count > VARIANTS_MAX) {
    context.report.add(child(at, 'options') ?? variantsAt ?? root, say.tooManyVariants(count, VARIANTS_MAX))
    return { baseNames, options: [], variants: baseNames.map((name, base) => ({ name, base, options: [] })), mix: null }
  }
  const variants = expand(baseNames, options)
  checkExpanded(context, variants, at ?? root)
  const mix = readMix(context, at, variantsAt, baseNames, options, variants)
  return { baseNames, options, variants, mix }
}

function readNames(context: Context, at: Located | null): string[] {
  if (at === null) return ['product']
  const names: string[] = []
  if (at.kind === 'list') {
    for (const item of at.items) {
      const name = textOf(item)
      if (name === null) continue
      if (checkName(context, name, (sentence) => context.report.add(item, sentence)) && names.includes(name))
        context.report.add(item, say.duplicateName('variants', name))
      names.push(name)
    }
  } else {
    for (const entry of entries(at)) {
      checkName(context, entry.key, (sentence) => addAtKey(context, entry, sentence))
      names.push(entry.key)
    }
  }
  if (names.length === 0 && (at.kind === 'list' || at.kind === 'map')) context.report.add(at, say.noVariants())
  return names.length === 0 ? ['product'] : names
}

/** Written order, last option fastest; `small`, `small + quietKit`, `small + coldKit`, `small + coldKit + quietKit`. */
function expand(baseNames: readonly string[], options: readonly Option[]): Variant[] {
  return baseNames.flatMap((baseName, base) =>
    Array.from({ length: 2 ** options.length }, (_, pattern) => {
      const chosen = options.map((_, i) => i).filter((i) => ((pattern >> (options.length - 1 - i)) & 1) === 1)
      return { name: [baseName, ...chosen.map((i) => options[i]!.name)].join(' + '), base, options: chosen }
    }),
  )
}

function checkExpanded(context: Context, variants: readonly Variant[], at: Located): void {
  const seen = new Set<string>()
  for (const variant of variants) {
    if (seen.has(variant.name) && variant.options.length > 0) context.report.add(at, say.duplicateName('variants', variant.name))
    seen.add(variant.name)
  }
}

function readMix(
  context: Context,
  at: Located | null,
  variantsAt: Located | null,
  baseNames: readonly string[],
  options: readonly Option[],
  variants: readonly Variant[],
): MixSpec | null {
  const mixAt = child(at, 'mix')
  const kind = textOf(mixAt) ?? textOf(child(mixAt, 'kind')) ?? 'random'
  if (mixAt === null) context.origins.set('products.mix', 'default')
  if (mixAt?.kind === 'map') {
    if (variantsAt?.kind === 'map') context.report.add(mixAt, say.mixAndShares())
    if (options.length > 0) {
      context.report.add(mixAt, say.mixNeeds(kind, 'variants without options'))
      return null
    }
    return kind === 'pattern' || kind === 'list' ? sequence(context, mixAt, kind, baseNames) : weights(context, mixAt, kind, baseNames)
  }
  if (variantsAt?.kind === 'list' && baseNames.length > 1) {
    context.report.add(variantsAt, say.mixNeeds(kind, 'a share beside each variant'))
    return null
  }
  const shares = variantsAt?.kind === 'map' ? readShares(context, variantsAt) : [ONE]
  const exact = shares === null ? null : variantShares(context, shares, baseNames, options, variants)
  if (exact === null) return null
  if (exact.every((share) => share.digits === 0n)) {
    context.report.add(variantsAt ?? at ?? mixAt!, say.sharesZero())
    return null
  }
  if (kind === 'levelled') return { kind, shares: wholeProportion(exact).map(Number) }
  return { kind: 'random', shares: exact.map((share) => toNumber(share)) }
}

/** Percentages that sum to 100, or whole weights; never a mix. */
function readShares(context: Context, at: Located): Decimal[] | null {
  const shares: (Decimal | undefined)[] = []
  const kinds = new Set<string>()
  for (const entry of entries(at)) {
    const bare = numberOf(entry.value)
    if (entry.value.kind === 'text') {
      kinds.add('percent')
      shares.push(percent(context, entry.value))
    } else if (bare !== null) {
      kinds.add('weight')
      if (bare < 0) context.report.add(entry.value, say.negative(entry.value.source))
      else if (!Number.isSafeInteger(bare)) context.report.add(entry.value, say.shareNumber(entry.value.source))
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

function variantShares(
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
    const place = child(at, name)
    return place === null ? undefined : optionPercent(context, place)
  })
  return shares.includes(undefined) ? null : (shares as Decimal[])
}

/** Every variant once, and nobody else. */
function checkVariantKeys(context: Context, at: Located, names: readonly string[]): void {
  const strangers = entries(at).filter((entry) => !names.includes(entry.key))
  for (const entry of strangers) addAtKey(context, entry, say.unknownVariant(entry.key, nearest(entry.key, names), names))
  const left = names.filter((name) => !at.entries.has(name))
  if (left.length > 0 && strangers.length === 0) context.report.add(at, say.shareMissing(left))
}

function optionPercent(context: Context, at: Located): Decimal | undefined {
  const share = percent(context, at)
  if (share === undefined || toNumber(share) <= 1) return share
  context.report.add(at, say.shareBeyond(String(at.value)))
  return undefined
}

function sequence(context: Context, mixAt: Located, kind: 'pattern' | 'list', names: readonly string[]): MixSpec | null {
  const at = child(mixAt, 'sequence')
  if (at === null || at.kind !== 'list') return null
  if (at.items.length === 0) {
    context.report.add(at, say.listEmpty())
    return null
  }
  const found = at.items.map((item) => {
    const name = textOf(item)
    const index = name === null ? -1 : names.indexOf(name)
    if (name !== null && index < 0) context.report.add(item, say.unknownVariant(name, nearest(name, names), names))
    return index
  })
  return found.includes(-1) ? null : { kind, sequence: found }
}

function weights(context: Context, mixAt: Located, kind: string, names: readonly string[]): MixSpec | null {
  const at = child(mixAt, 'weights')
  if (at === null || at.kind !== 'map') return null
  checkVariantKeys(context, at, names)
  const shares = names.map((name) => {
    const place = child(at, name)
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
