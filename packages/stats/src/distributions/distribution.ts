/**
 * A duration (or another quantity) as data: complete, plain, JSON. Every field is required; values are in the unit of the quantity, seconds for times.
 * Each kind has its own file beside this one, with its inverse, mean, variance and cdf. One uniform makes one draw.
 */
export type Distribution =
  | { readonly kind: 'constant'; readonly value: number }
  | { readonly kind: 'uniform'; readonly min: number; readonly max: number }
  | { readonly kind: 'triangular'; readonly min: number; readonly mode: number; readonly max: number }
  | { readonly kind: 'exponential'; readonly mean: number }
  | { readonly kind: 'lognormal'; readonly mean: number; readonly cv: number }
  | { readonly kind: 'gamma'; readonly mean: number; readonly cv: number }
  | { readonly kind: 'weibull'; readonly shape: number; readonly scale: number }
  | { readonly kind: 'pert'; readonly min: number; readonly mode: number; readonly max: number }
  | { readonly kind: 'empirical'; readonly values: readonly number[]; readonly interpolate: boolean }
  | { readonly kind: 'discrete'; readonly values: readonly number[]; readonly weights: readonly number[] }
  | { readonly kind: 'replay'; readonly values: readonly number[] }
  /** `base`, and with the given probability a draw of `of` on top, both from the one uniform. */
  | { readonly kind: 'occasional'; readonly base: number; readonly probability: number; readonly of: Distribution }
  /** `shift` is added to `of`; then values below `min` or above `max` (of the result) are cut away by conditioning, never by redrawing. */
  | {
      readonly kind: 'limited'
      readonly of: Distribution
      readonly shift: number
      readonly min: number | null
      readonly max: number | null
    }

/** What a distribution is called: `constant`, `lognormal`, … */
export type DistributionKind = Distribution['kind']
