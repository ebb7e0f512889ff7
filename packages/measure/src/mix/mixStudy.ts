/** Orders judged: shares, options, a levelled sequence, and the heaviest hour, day and week. */
import { meanOf, mostBehind } from '@loopwright/stats'
import type { Order } from './readOrders.ts'

/** Units of one product, or of one product with its options. */
export interface MixShare {
  /** options behind it: `small + coldKit` */
  readonly name: string
  readonly units: number
  readonly share: number
}

/** How often an option is ordered. */
export interface OptionShare {
  readonly option: string
  readonly share: number
  /** of each product's units, in the order of `products` */
  readonly byProduct: readonly number[]
}

/** The heaviest stretch of one length. */
export interface WorstStretch {
  readonly length: 'hour' | 'day' | 'week'
  /** of the wall clock, seconds */
  readonly start: number
  readonly units: number
  /** seconds of work per unit where work was given, else units */
  readonly load: number
  /** what an average stretch of this length has */
  readonly loadMean: number
  /** stretches looked at */
  readonly stretches: number
  /** products in the order of their orders */
  readonly sequence: readonly string[]
}

/** Orders, judged. */
export interface MixStudy {
  readonly units: number
  readonly products: readonly MixShare[]
  readonly options: readonly OptionShare[]
  /** every product with its options */
  readonly variants: readonly MixShare[]
  /** one round of the levelled order: products by `mostBehind` */
  readonly levelled: readonly string[]
  readonly worst: readonly WorstStretch[]
}

/** How orders are judged. */
export interface MixRequest {
  /** seconds of work by product at the place that limits: the heaviest stretch then has the most work per unit. Default: the most units */
  readonly work?: Readonly<Record<string, number>>
  /** units of a round of the levelled order, at most. Default: 20 */
  readonly round?: number
}

const SECONDS = { hour: 3600, day: 86_400, week: 7 * 86_400 } as const
/** a list of the worst stretch holds so many units at most */
const LISTED = 1000

/**
 * Shares of products and options, and sequences.
 *
 * @throws RangeError  without an order
 * @example mixStudy([{ product: 'small', options: [], units: 3, when: null, timed: false, line: 2 }, { product: 'large', options: [], units: 1, when: null, timed: false, line: 3 }]).levelled // => ['small', 'small', 'large', 'small']
 */
export function mixStudy(orders: readonly Order[], { work, round = 20 }: MixRequest = {}): MixStudy {
  if (orders.length === 0) throw new RangeError('a mix needs at least one order')
  const units = orders.reduce((sum, one) => sum + one.units, 0)
  const shares = (nameOf: (order: Order) => string): MixShare[] => {
    const counts = new Map<string, number>()
    for (const one of orders) counts.set(nameOf(one), (counts.get(nameOf(one)) ?? 0) + one.units)
    return [...counts].map(([name, count]) => ({ name, units: count, share: count / units }))
  }
  const products = shares(({ product }) => product)
  const names = [...new Set(orders.flatMap(({ options }) => options))]
  const counted = (of: (order: Order) => boolean): number => orders.reduce((sum, one) => sum + (of(one) ? one.units : 0), 0)
  const options = names.map((option) => ({
    option,
    share: counted((one) => one.options.includes(option)) / units,
    byProduct: products.map(({ name, units: all }) => counted((one) => one.product === name && one.options.includes(option)) / all),
  }))
  const levelled = levelledRound(
    products.map((one) => one.units),
    round,
  ).map((index) => products[index]!.name)
  return {
    units,
    products,
    options,
    variants: shares(({ product, options: own }) => [product, ...own].join(' + ')),
    levelled,
    worst: worstStretches(orders, work ?? null),
  }
}

/**
 * Indices of one round of the levelled order. Shares that are not whole in a short round are met as nearly as so many units can (Webster's divisor rule).
 *
 * @param most  units of the round, at most
 * @see Balinski & Young, Fair Representation (1982), from memory, for the divisor rule
 * @example levelledRound([52, 31, 17], 20).length // => 20
 */
export function levelledRound(counts: readonly number[], most: number): number[] {
  const divisor = counts.reduce((a, b) => greatest(a, b))
  const whole = counts.map((count) => count / divisor)
  const sum = whole.reduce((a, b) => a + b, 0)
  const quotas = sum <= most ? whole : webster(counts, most)
  const all = quotas.reduce((a, b) => a + b, 0)
  const given = quotas.map(() => 0)
  return Array.from({ length: all }, (_, place) => {
    const next = mostBehind(quotas, all, given, place)
    given[next]!++
    return next
  })
}

const greatest = (a: number, b: number): number => (b === 0 ? a : greatest(b, a % b))

/** The next unit to whom it is owed most: w/(2x + 1). */
function webster(counts: readonly number[], units: number): number[] {
  const given = counts.map(() => 0)
  for (let unit = 0; unit < units; unit++) {
    let best = 0
    for (let index = 1; index < counts.length; index++)
      if (counts[index]! * (2 * given[best]! + 1) > counts[best]! * (2 * given[index]! + 1)) best = index
    given[best]!++
  }
  return given
}

function worstStretches(orders: readonly Order[], work: Readonly<Record<string, number>> | null): WorstStretch[] {
  const dated = orders.filter(({ when }) => when !== null)
  if (dated.length === 0) return []
  const lengths = (['hour', 'day', 'week'] as const).filter((length) => length !== 'hour' || dated.every(({ timed }) => timed))
  return lengths.flatMap((length): WorstStretch[] => {
    const groups = new Map<number, Order[]>()
    for (const one of dated) {
      // weeks begin on Monday; 1970-01-01 was a Thursday
      const shift = length === 'week' ? 3 * 86_400 : 0
      const start = Math.floor((one.when! + shift) / SECONDS[length]) * SECONDS[length] - shift
      const group = groups.get(start)
      if (group === undefined) groups.set(start, [one])
      else group.push(one)
    }
    if (groups.size < 2) return []
    const load = (group: readonly Order[]): number => {
      const units = group.reduce((sum, one) => sum + one.units, 0)
      return work === null ? units : group.reduce((sum, one) => sum + one.units * (work[one.product] ?? 0), 0) / units
    }
    const all = [...groups].map(([start, group]) => ({ start, group, load: load(group) }))
    const worst = all.reduce((most, one) => (one.load > most.load ? one : most))
    const sequence = worst.group
      .toSorted((a, b) => a.when! - b.when! || a.line - b.line)
      .flatMap((one) => Array<string>(Math.min(one.units, LISTED)).fill([one.product, ...one.options].join(' + ')))
    return [
      {
        length,
        start: worst.start,
        units: worst.group.reduce((sum, one) => sum + one.units, 0),
        load: worst.load,
        loadMean: meanOf(all.map((one) => one.load)),
        stretches: all.length,
        sequence: sequence.slice(0, LISTED),
      },
    ]
  })
}

/**
 * The heaviest stretches by name, as the variations of a scenario that run them: its products without shares, and a list.
 *
 * @param variants  names of the scenario's products. Default: those of the orders
 * @example stretchesOf({ worst: [], products: [] }) // => []
 */
export function stretchesOf(
  { worst, products }: Pick<MixStudy, 'worst' | 'products'>,
  variants: readonly string[] = products.map(({ name }) => name),
): { readonly name: string; readonly value: string }[] {
  const list = (names: readonly string[]): string => `[${names.map((name) => JSON.stringify(name)).join(', ')}]`
  return worst.map(({ length, sequence }) => ({
    name: `heaviest ${length}`,
    value: `{ products.variants: ${list(variants)}, products.mix: { kind: list, sequence: ${list(sequence)} } }`,
  }))
}
