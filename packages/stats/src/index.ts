// Refusals
export type { StatisticsErrorCode } from './statisticsError.ts'
export { StatisticsError } from './statisticsError.ts'
// Random streams
export type { Stream } from './random/stream.ts'
export { stream } from './random/stream.ts'
export { StreamTable } from './random/streamTable.ts'
// Distributions
export type { Distribution, DistributionKind } from './distributions/distribution.ts'
