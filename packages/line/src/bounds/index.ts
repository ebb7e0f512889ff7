// The law
export { law, lawOrNull, mixShares, taskMean } from './law.ts'
export type { Law, Exchange } from './law.ts'
export type { EstimateReason } from './exactness.ts'
export { lawTerms } from './lawTerms.ts'
export type { LawTerms } from './lawTerms.ts'

// What limits any line
export { lineLimits } from './limits.ts'
export { LIMIT_KINDS } from './limit.ts'
export type { Limit, LimitKind, LimitParts, LimitReason } from './limit.ts'
export { loadSupplies } from './goodsLimits.ts'

// Time that counts
export { windowSecondsOf, workingSeconds } from './workingSeconds.ts'
export { availability } from './stopShares.ts'
