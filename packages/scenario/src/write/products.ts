/** Variants, mix and groups in the complete form, and names with their titles. */
import type { LineSpec, MixSpec } from '@loopwright/line'
import type { YAMLMap, YAMLSeq } from 'yaml'
import type { Scenario, VariantGroup } from '../scenario.ts'
import { flow, flowList, map, number, type Style, text } from './nodes.ts'

export function products({ line, titles, variantGroups }: Scenario, style: Style): YAMLMap {
  const grouped = JSON.stringify(variantGroups) !== JSON.stringify(ungrouped(line, titles.variants))
  return map('products', style, [
    ['variants', named(line.variants, titles.variants)],
    ['mix', mixOf(line, line.mix)],
    ['groups', grouped ? groups(line, variantGroups, style) : null],
  ])
}

/** Names, with a title where there is one. */
export function named(names: readonly string[], titles: Readonly<Record<string, string>>): YAMLSeq {
  return flowList(
    names.map((name) =>
      Object.hasOwn(titles, name)
        ? flow([
            ['name', text(name)],
            ['title', text(titles[name]!)],
          ])
        : text(name),
    ),
  )
}

/** Each variant by itself: what a file means that lists them and says no groups. */
export function ungrouped(line: LineSpec, titles: Readonly<Record<string, string>>): VariantGroup[] {
  return line.variants.map((name, index) => ({ name, title: Object.hasOwn(titles, name) ? titles[name]! : name, variants: [index] }))
}

function groups(line: LineSpec, variantGroups: readonly VariantGroup[], style: Style): YAMLMap {
  return map(
    'products.groups',
    style,
    variantGroups.map(({ name, title, variants }) => [
      name,
      flow([
        ['title', title === name ? null : text(title)],
        ['variants', flowList(variants.map((variant) => text(line.variants[variant]!)))],
      ]),
    ]),
  )
}

function mixOf(line: LineSpec, mix: MixSpec): YAMLMap {
  if (mix.kind === 'pattern' || mix.kind === 'list')
    return flow([
      ['kind', text(mix.kind)],
      ['sequence', flowList(mix.sequence.map((variant) => text(line.variants[variant]!)))],
    ])
  return flow([
    ['kind', text(mix.kind)],
    ['weights', flow(mix.shares.map((share, i) => [line.variants[i]!, number(share)]))],
  ])
}
