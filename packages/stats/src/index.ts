// Random numbers, by name
export { stream } from './random/stream.ts'
export type { Stream } from './random/stream.ts'
export { StreamTable } from './random/streamTable.ts'

// Distributions
export type { Distribution, DistributionKind } from './distributions/distribution.ts'
export {
  distributionKinds,
  checkDistribution,
  distributionMean,
  distributionVariance,
  distributionCdf,
  meanUpTo,
  distributionWords,
  hasAtoms,
  scaledTimes,
  longerTimes,
} from './distributions/distributions.ts'
export type { DistributionForm } from './distributions/distributions.ts'
export type { FieldIs, DrawUse } from './distributions/kind.ts'
export { quantile, SamplerTable } from './distributions/samplerTable.ts'

// Shares and mixes
export { cumulativeShares, shareIndexAt } from './distributions/discrete.ts'
export { mostBehind } from './sequence/levelled.ts'

// What a sample says
export { meanOf } from './accumulate/mean.ts'
export { Tally } from './accumulate/tally.ts'
export { sampleQuantile } from './accumulate/sampleQuantile.ts'
export { meanInterval } from './infer/meanInterval.ts'
export type { MeanInterval, MeanStatus } from './infer/meanInterval.ts'
export { outputInterval } from './infer/outputInterval.ts'
export type { OutputInterval, OutputStatus } from './infer/outputInterval.ts'
export { windowInterval } from './infer/windowInterval.ts'
export type { WindowInterval } from './infer/windowInterval.ts'
export { quantileEstimate } from './infer/quantileEstimate.ts'
export type { QuantileEstimate, QuantileStatus } from './infer/quantileEstimate.ts'
export { binomialEstimate } from './infer/binomialEstimate.ts'
export type { BinomialEstimate, BinomialStatus } from './infer/binomialEstimate.ts'
export { tQuantile } from './special/tQuantile.ts'

// Whether nine of ten meet a plan
export { chanceVerdict, certainVerdict, PLAN_SHARE } from './infer/chanceVerdict.ts'
export type { ChanceVerdict, ChanceMethod, ChanceRule, ChanceWord } from './infer/chanceVerdict.ts'

// Refusals
export { StatisticsError } from './statisticsError.ts'
export type { StatisticsErrorCode } from './statisticsError.ts'
