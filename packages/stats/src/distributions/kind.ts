import type { Distribution, DistributionKind } from './distribution.ts'

/** The record of one kind. */
export type Of<K extends DistributionKind> = Extract<Distribution, { kind: K }>

/**
 * What one kind of distribution can tell of itself. The inverse stands beside it as a function `<kind>Into(parameters, offset, io)`,
 * which replaces the uniform in `io[0]` by the value and allocates nothing.
 */
export interface Kind<K extends DistributionKind> {
  /** plain reasons why the parameters cannot be used; empty: they can; never throws */
  reasons(d: Of<K>, inner: Inner): string[]
  /** the numbers that `<kind>Into` reads, in its order */
  parameters(d: Of<K>): readonly number[]
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
