// Normal and t
export { normalCdf } from './normal.ts'
export { normalQuantile, normalQuantilesInto } from './normalQuantile.ts'

// Gamma
export { lnGamma } from './lnGamma.ts'
export { gammaP, gammaQ } from './incompleteGamma.ts'
export { gammaQuantile, chiSquareQuantile } from './gammaQuantile.ts'
export { digamma, trigamma } from './polygamma.ts'

// Beta
export { betaTails } from './incompleteBeta.ts'
export type { Tails } from './incompleteBeta.ts'
export { betaQuantile } from './betaQuantile.ts'
export type { BetaPoint } from './betaQuantile.ts'
export { fQuantile } from './fQuantile.ts'
export { binomialCdf } from './binomialCdf.ts'
