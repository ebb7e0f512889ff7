/** Products of a sketch: variants, and in which order they are made. */
import { sentences as say } from '../check/sentences.ts'
import type { MixSpec } from '../spec.ts'
import type { Report } from './report.ts'
import type { ProductsSketch } from './sketch.ts'
import { amount, checkNames, type Names, namesOf, referAll } from './values.ts'

export interface Products {
  readonly variants: Names
  readonly mix: MixSpec
}

export function productsOf(report: Report, products: ProductsSketch = {}): Products {
  const { variants = ['product'], mix = 'random' } = products
  const weighed = !isList(variants)
  const names = weighed ? Object.keys(variants) : variants
  if (names.length === 0) report.add('products.variants', say.noVariants())
  checkNames(report, 'variants', names, (name) => `products.variants.${name}`)
  const known = namesOf(names, say.unknownVariant)
  if (typeof mix !== 'string') {
    if (weighed) report.add('products.mix', say.mixAndShares())
    if (mix.sequence.length === 0) report.add('products.mix.sequence', say.listEmpty())
    const sequence = referAll(report, 'products.mix.sequence', mix.sequence, known)
    return { variants: known, mix: { kind: mix.kind, sequence } }
  }
  if (!weighed && names.length > 1) report.add('products.variants', say.mixNeeds(mix, 'shares'))
  const shares = weighed ? names.map((name) => amount(report, `products.variants.${name}`, variants[name]!, 'zero')) : names.map(() => 1)
  if (shares.every((weight) => weight === 0)) report.add('products.variants', say.sharesZero())
  if (mix === 'levelled' && !shares.every(Number.isInteger)) report.add('products.variants', say.weightsWhole())
  return { variants: known, mix: { kind: mix, shares } }
}

const isList = (variants: NonNullable<ProductsSketch['variants']>): variants is readonly string[] => Array.isArray(variants)
