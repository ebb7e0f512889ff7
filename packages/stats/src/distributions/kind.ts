import type { Distribution, DistributionKind } from './distribution.ts'

/** The record of one kind. */
export type Of<K extends DistributionKind> = Extract<Distribution, { kind: K }>

/**
 * What a field of a record is. `value`: one of the values it makes, such as a time, 0 or more; `positive`: above 0; `extra`: one that is added, 0 for none; `limit`: a value or null; `values`: a list.
 * `share`: 0 … 1; `ratio`: a share that may be above 1; `number`, `numbers`: bare; `flag`; `distribution`: one inside.
 */
export type FieldIs =
  | 'value'
  | 'positive'
  | 'extra'
  | 'limit'
  | 'values'
  | 'share'
  | 'ratio'
  | 'number'
  | 'numbers'
  | 'flag'
  | 'distribution'

/** One field: what it is, and what it means where its name does not say it. */
export type Field = readonly [is: FieldIs, says?: string]

/** How the parts of a distribution become text: in the unit of its values, or without one. */
export interface Words {
  readonly value: (value: number) => string
  readonly share: (share: number) => string
  readonly number: (number: number) => string
  readonly mean: (d: Distribution) => string
  readonly distribution: (d: Distribution) => string
}

/** What a draw takes: nothing, one uniform, or its number in the list. */
export type DrawUse = 'nothing' | 'uniform' | 'index'

/** An inverse: replaces the uniform in `io[0]` by the value and allocates nothing. It reads its numbers from `p[o]` on; `k` is the number of the draw, from 0. */
export type Into = (p: Float64Array, o: number, io: Float64Array, k: number) => void

/** The same for `count` uniforms from `io[first]` on. */
export type ManyInto = (p: Float64Array, o: number, io: Float64Array, first: number, count: number) => void

/** How a kind draws that has another distribution inside: before the inner inverse, and after it. */
export interface Around<K extends DistributionKind> {
  /** the distribution inside, as it is drawn from */
  of(d: Of<K>): Distribution
  /** true: `io[0]` is now the uniform of the one inside; false: it is the value */
  before(p: Float64Array, o: number, io: Float64Array): boolean
  after(p: Float64Array, o: number, io: Float64Array): void
}

/** All that one kind of distribution can tell of itself. Its file, its record and its row are all that a kind needs. */
export interface Kind<K extends DistributionKind> {
  /** every field of the record but its kind, in the order in which files write them */
  readonly fields: { readonly [F in Exclude<keyof Of<K>, 'kind'>]: Field }
  /** what it is for, in a few words */
  readonly says: string
  /** null: of a kind with another inside, see `around` */
  readonly inverse: (d: Of<K>) => Into | null
  readonly around?: Around<K>
  /** the same values as the inverse, quicker; default: one after the other */
  readonly many?: ManyInto
  /** default: one uniform */
  readonly draws?: (d: Of<K>, inner: Inner) => DrawUse
  /** single values have a chance of their own; default false */
  readonly atoms?: true
  /** its record with every value greater by so much; default: its values, limits and what is added move, and where it has none, a shift by `limited` */
  readonly longer?: (d: Of<K>, by: number) => Distribution
  words(d: Of<K>, to: Words): string
  /** plain reasons why the parameters cannot be used; empty: they can; never throws */
  reasons(d: Of<K>, inner: Inner): string[]
  /** the numbers that the inverse reads, in its order */
  parameters(d: Of<K>, inner: Inner): readonly number[]
  mean(d: Of<K>, inner: Inner): number
  variance(d: Of<K>, inner: Inner): number
  /** chance of a value ≤ x; with `inclusive` false, < x */
  cdf(d: Of<K>, x: number, inclusive: boolean, inner: Inner): number
  /** E[X^order; X ≤ x], or X < x: the part of a moment that lies below x */
  momentBelow(d: Of<K>, order: 1 | 2, x: number, inclusive: boolean, inner: Inner): number
}

/** The same questions for a distribution of any kind: what `occasional` and `limited` ask of the one inside. */
export interface Inner {
  reasons(d: Distribution): string[]
  draws(d: Distribution): DrawUse
  mean(d: Distribution): number
  variance(d: Distribution): number
  cdf(d: Distribution, x: number, inclusive: boolean): number
  momentBelow(d: Distribution, order: 1 | 2, x: number, inclusive: boolean): number
}

/** x² or x */
export const power = (x: number, order: 1 | 2): number => (order === 1 ? x : x * x)

const below = (x: number, limit: number, inclusive: boolean): boolean => (inclusive ? x <= limit : x < limit)

/** Chance that one of the weighted values is ≤ x (or < x). */
export function weightBelow(values: readonly number[], weights: readonly number[] | null, x: number, inclusive: boolean): number {
  return sumBelow(values, weights, () => 1, x, inclusive)
}

/** Weighted moment of the values ≤ x (or < x). */
export function momentOfValuesBelow(
  values: readonly number[],
  weights: readonly number[] | null,
  order: 1 | 2,
  x: number,
  inclusive: boolean,
): number {
  return sumBelow(values, weights, (value) => power(value, order), x, inclusive)
}

function sumBelow(
  values: readonly number[],
  weights: readonly number[] | null,
  of: (value: number) => number,
  x: number,
  inclusive: boolean,
): number {
  let sum = 0
  let total = 0
  for (let i = 0; i < values.length; i++) {
    const weight = weights === null ? 1 : weights[i]!
    total += weight
    if (below(values[i]!, x, inclusive)) sum += weight * of(values[i]!)
  }
  return sum / total
}
