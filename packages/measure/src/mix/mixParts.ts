/** What orders give to a scenario: shares of variants and options, and the heaviest stretches as lists. */
import { type MixStudy, stretchesOf } from './mixStudy.ts'

/** A value of a scenario by its path. */
export interface MixPart {
  readonly path: string
  readonly value: string
  readonly from: string
}

const key = (name: string): string => JSON.stringify(name)
const percent = (share: number): string => `${Number((100 * share).toPrecision(8))} %`

/**
 * Whole weights of the products, and shares of the options by product.
 *
 * @param options  options that the scenario has: those of the orders that it has not are expanded into products of their own. Default: it has all
 * @example mixParts(mixStudy([{ product: 'small', options: [], units: 3, when: null, timed: false, line: 2 }]), 'orders.csv')[0].value // => '{ "small": 3 }'
 */
export function mixParts(study: MixStudy, file: string, options: readonly string[] | null = null): MixPart[] {
  const from = `ordered, ${file}: ${study.units} units`
  const expanded = options !== null && study.options.some(({ option }) => !options.includes(option))
  const list = expanded ? study.variants : study.products
  const variants: MixPart = {
    path: 'products.variants',
    value: `{ ${list.map(({ name, units }) => `${key(name)}: ${units}`).join(', ')} }`,
    from,
  }
  if (expanded) return [variants]
  return [
    variants,
    ...study.options.map(({ option, byProduct }) => ({
      path: `products.options.${key(option)}.share`,
      value: `{ ${study.products.map(({ name }, index) => `${key(name)}: ${percent(byProduct[index]!)}`).join(', ')} }`,
      from,
    })),
  ]
}

/**
 * The parts as the text of a file: products, and the heaviest stretches as variations.
 *
 * @example mixPartsText(mixStudy([{ product: 'small', options: [], units: 3, when: null, timed: false, line: 2 }]), 'orders.csv', []).split('\n')[0] // => 'products:'
 */
export function mixPartsText(study: MixStudy, file: string, heading: readonly string[]): string {
  const [variants, ...options] = mixParts(study, file)
  const lines = [
    ...heading.map((line) => `# ${line.replaceAll(/\s+/g, ' ')}`),
    'products:',
    `  variants: ${variants!.value} # ${variants!.from}`,
    ...(options.length === 0
      ? []
      : ['  options:', ...study.options.map(({ option }, index) => `    ${key(option)}: { share: ${options[index]!.value} }`)]),
    ...(study.worst.length === 0 ? [] : ['variations:']),
    ...stretchesOf(study).map(({ name, value }) => `  ${name}: ${value}`),
  ]
  return `${lines.join('\n')}\n`
}
