/** Products: variants with shares, options that expand them, and the mix. Shares are multiplied exactly and rounded once. */
import type { MixSpec } from '@loopwright/line'
import { toNumber, wholeProportion } from '../../text/decimal.ts'
import type { Located } from '../../text/located.ts'
import * as say from '../../problems/messages.ts'
import type { VariantGroup } from '../../scenario.ts'
import { addAtKey, type Context, checkName, child, entries, near, quantity, textOf } from '../context.ts'
import { ONE, readShares, sequence, variantShares, weights } from './shares.ts'
import { createTitles, type Titles } from '../titles.ts'
import type { Option, Variant } from './variant.ts'

export interface Products {
  readonly baseNames: readonly string[]
  readonly options: readonly Option[]
  readonly variants: readonly Variant[]
  readonly mix: MixSpec | null
  /** of the variants, by name, where they differ from it */
  readonly titles: ReadonlyMap<string, string>
  readonly groups: readonly VariantGroup[]
}

const VARIANTS_MAX = 1000

export function readProducts(context: Context, root: Located): Products {
  const at = child(root, 'products')
  const variantsAt = child(at, 'variants')
  const titles = createTitles(context, 'variants and options')
  const baseNames = readNames(context, variantsAt, titles)
  const options = entries(child(at, 'options')).map((entry) => {
    checkName(context, entry.key, (sentence) => addAtKey(context, entry, sentence))
    titles.read(entry.key, child(entry.value, 'title'), entry)
    const adds = entries(child(entry.value, 'adds')).map((add) => [add.key, quantity(context, add.value, 'duration', 'zero')] as const)
    return { name: entry.key, at: entry.value, adds: new Map(adds) }
  })
  if (variantsAt === null) context.origins.set('products.variants', 'default')
  const count = baseNames.length * 2 ** options.length
  if (count > VARIANTS_MAX) {
    context.report.add(child(at, 'options') ?? variantsAt ?? root, say.tooManyVariants(count, VARIANTS_MAX))
    return {
      baseNames,
      options: [],
      variants: baseNames.slice(0, VARIANTS_MAX).map((name, base) => ({ name, base, options: [] })),
      mix: null,
      titles: new Map(),
      groups: [],
    }
  }
  const variants = expand(baseNames, options)
  checkExpanded(context, variants, at ?? root)
  const mix = readMix(context, at, variantsAt, baseNames, options, variants)
  const said = titles.given()
  const expanded = variants.map((variant): [string, string] => {
    const parts = [baseNames[variant.base]!, ...variant.options.map((i) => options[i]!.name)]
    return [variant.name, parts.map((part) => said.get(part) ?? part).join(' + ')]
  })
  return {
    baseNames,
    options,
    variants,
    mix,
    titles: new Map(expanded.filter(([name, title]) => name !== title)),
    groups: readGroups(context, child(at, 'groups'), { baseNames, options, variants, titles: said }),
  }
}

function readNames(context: Context, at: Located | null, titles: Titles): string[] {
  if (at === null) return ['product']
  const names: string[] = []
  const seen = new Set<string>()
  if (at.kind === 'list') {
    for (const listed of at.items) {
      const item = child(listed, 'name') ?? listed
      const name = textOf(item)
      if (name === null) continue
      titles.read(name, child(listed, 'title'), item)
      if (checkName(context, name, (sentence) => context.report.add(item, sentence)) && seen.has(name))
        context.report.add(item, say.duplicateName('variants', name))
      seen.add(name)
      names.push(name)
    }
  } else {
    for (const entry of entries(at)) {
      checkName(context, entry.key, (sentence) => addAtKey(context, entry, sentence))
      titles.read(entry.key, child(entry.value, 'title'), entry)
      names.push(entry.key)
    }
  }
  if (names.length === 0 && (at.kind === 'list' || at.kind === 'map')) context.report.add(at, say.noVariants())
  return names.length === 0 ? ['product'] : names
}

/** Variants as written, then options; or as the file groups them. */
function readGroups(
  context: Context,
  at: Located | null,
  { baseNames, options, variants, titles }: Pick<Products, 'baseNames' | 'options' | 'variants' | 'titles'>,
): VariantGroup[] {
  const where = (holds: (variant: Variant) => boolean): number[] => variants.flatMap((variant, index) => (holds(variant) ? [index] : []))
  if (at === null)
    return [
      ...baseNames.map((name, i) => ({ name, title: titles.get(name) ?? name, variants: where(({ base }) => base === i) })),
      ...options.map(({ name }, i) => ({ name, title: titles.get(name) ?? name, variants: where((each) => each.options.includes(i)) })),
    ]
  const own = createTitles(context, 'groups')
  const names = variants.map(({ name }) => name)
  return entries(at).map((entry) => {
    checkName(context, entry.key, (sentence) => addAtKey(context, entry, sentence))
    const title = own.read(entry.key, child(entry.value, 'title'), entry)
    const inside = (child(entry.value, 'variants')?.items ?? []).flatMap((item) => {
      const name = textOf(item)
      const index = name === null ? -1 : names.indexOf(name)
      if (name !== null && index < 0) context.report.add(item, say.unknownVariant(name, near(context, name, names), names))
      return index < 0 ? [] : [index]
    })
    return { name: entry.key, title, variants: inside }
  })
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
  const seen = new Map<string, boolean>()
  for (const { name, options } of variants) {
    const expanded = options.length > 0
    if (expanded) checkName(context, name, (sentence) => context.report.add(at, sentence))
    if (seen.has(name) && (expanded || seen.get(name) === true)) context.report.add(at, say.duplicateName('variants', name))
    seen.set(name, expanded)
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
      context.report.add(mixAt, say.mixNeeds(kind, 'no options'))
      return null
    }
    return kind === 'pattern' || kind === 'list' ? sequence(context, mixAt, kind, baseNames) : weights(context, mixAt, kind, baseNames)
  }
  if (variantsAt?.kind === 'list' && baseNames.length > 1) {
    context.report.add(variantsAt, say.mixNeeds(kind, 'shares'))
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
