/**
 * Which chance events a study met; what a seed is stands beside it.
 *
 * @example seedWords('1') // => 'seed 1 (the same seed, the same numbers)'
 */
export const seedWords = (seed: string): string => `seed ${seed} (the same seed, the same numbers)`
