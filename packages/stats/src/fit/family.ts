import type { Distribution } from '../distributions/distribution.ts'

/** The families that task times are fitted with. */
export type Family = 'lognormal' | 'gamma' | 'weibull'

/** Two parameters: lognormal mu, sigma of the logarithm; gamma shape, scale; Weibull shape, scale. */
export type FamilyParameters = readonly [number, number]

/** What a family can do. Values are above 0: a shift has been taken away. Weights sum to 1; null: all equal. */
export interface FamilyRules {
  /** maximum likelihood */
  fit(values: readonly number[], weights: readonly number[] | null): FamilyParameters
  /** ln of the density, with all constants */
  lnDensity(parameters: FamilyParameters, x: number): number
  /** ln F(x) and ln(1 − F(x)), each from its own tail */
  lnTails(parameters: FamilyParameters, x: number): { readonly lower: number; readonly upper: number }
  quantile(parameters: FamilyParameters, u: number): number
  /** the same for very many of them; relative error at most 1e-9 */
  quantiles(parameters: FamilyParameters): (u: number) => number
  distribution(parameters: FamilyParameters): Distribution
}

/** Σ wᵢ·f(xᵢ), or the mean of f where all weights are equal. */
export function weightedMean(values: readonly number[], weights: readonly number[] | null, of: (x: number) => number): number {
  let sum = 0
  for (let i = 0; i < values.length; i++) sum += (weights === null ? 1 : weights[i]!) * of(values[i]!)
  return weights === null ? sum / values.length : sum
}
