// Refusals

// Accumulators
export { lag1 } from './accumulate/lag1.ts'
export { sampleQuantile } from './accumulate/sampleQuantile.ts'
export type { Spell, StateShares } from './accumulate/stateShares.ts'
export { stateShares } from './accumulate/stateShares.ts'
export { Tally } from './accumulate/tally.ts'
export type { Change } from './accumulate/timeWeighted.ts'
export { timeWeightedMean } from './accumulate/timeWeighted.ts'
// Line balance
export type { Balance } from './balance/fewestStations.ts'
export { fewestStations, smallestCycle } from './balance/fewestStations.ts'
export type { Tasks } from './balance/precedence.ts'
export type { StationLoad, Takt } from './balance/takt.ts'
export { stationLoad, takt } from './balance/takt.ts'
// Bottleneck
export type { ActivePeriod, ActivePeriods, MomentaryBottleneck } from './bottleneck/activePeriods.ts'
export { activePeriods } from './bottleneck/activePeriods.ts'
export type { ArrowCandidate, Arrows } from './bottleneck/arrows.ts'
export { arrows } from './bottleneck/arrows.ts'
export type { ScaledOutputs } from './bottleneck/elasticity.ts'
export { elasticity, exchangeElasticity, limitingParts } from './bottleneck/elasticity.ts'
// Distributions
export { cumulativeShares, shareIndex, shareIndexAt } from './distributions/discrete.ts'
export type { Distribution, DistributionKind } from './distributions/distribution.ts'
export type { DistributionForm } from './distributions/distributions.ts'
export {
  checkDistribution,
  distributionCdf,
  distributionKinds,
  distributionMean,
  distributionVariance,
  distributionWords,
  hasAtoms,
  longerTimes,
  scaledTimes,
} from './distributions/distributions.ts'
export type { DrawUse, FieldIs } from './distributions/kind.ts'
export { quantile, SamplerTable } from './distributions/samplerTable.ts'
// Fitting
export type { BootstrapTest } from './fit/bootstrapTest.ts'
export { bootstrapTest } from './fit/bootstrapTest.ts'
export type { DurationCandidate, DurationChoice } from './fit/chooseDuration.ts'
export { chooseDuration } from './fit/chooseDuration.ts'
export type { DurationFit, Shift } from './fit/durationFit.ts'
export { fitDuration, NO_SHIFT, shiftFromData } from './fit/durationFit.ts'
export type { Family, FamilyParameters } from './fit/family.ts'
export type { Goodness } from './fit/goodness.ts'
export { goodness } from './fit/goodness.ts'
export type { LognormalTest } from './fit/lognormalTest.ts'
export { lognormalTest } from './fit/lognormalTest.ts'
export type { Drift, Fences } from './fit/timeStudy.ts'
export { drift, fences, observationsNeeded } from './fit/timeStudy.ts'
// More intervals
export { againstFirst } from './infer/againstFirst.ts'
export type { ComparedPair } from './infer/allPairs.ts'
export { allPairs } from './infer/allPairs.ts'
export type { BatchCandidate, BatchMeans } from './infer/batchMeans.ts'
export { batchMeans, chosenBatches } from './infer/batchMeans.ts'
// Intervals
export type { BinomialEstimate, BinomialStatus } from './infer/binomialEstimate.ts'
export { binomialEstimate } from './infer/binomialEstimate.ts'
export { CHANCE_LOOKS, chanceLooks, nextLook } from './infer/chanceLooks.ts'
export type { ChanceMethod, ChanceRule, ChanceVerdict, ChanceWord } from './infer/chanceVerdict.ts'
export { certainVerdict, chanceVerdict, PLAN_SHARE } from './infer/chanceVerdict.ts'
export type { Control, ControlledMean } from './infer/controlVariate.ts'
export { controlVariate } from './infer/controlVariate.ts'
export type { FactorialEffects, Interaction, MainEffect } from './infer/factorialEffects.ts'
export { factorialEffects } from './infer/factorialEffects.ts'
export type { MeanInterval, MeanStatus } from './infer/meanInterval.ts'
export { meanInterval } from './infer/meanInterval.ts'
export type { OutputInterval, OutputStatus } from './infer/outputInterval.ts'
export { outputInterval } from './infer/outputInterval.ts'
export type { RunKey } from './infer/pairable.ts'
export { whyNotPairable } from './infer/pairable.ts'
export type { DifferenceStatus, PairedDifference, PairedLowerLimit } from './infer/pairedDifference.ts'
export { pairedDifference, pairedLowerLimit } from './infer/pairedDifference.ts'
export type { PredictionInterval } from './infer/predictionInterval.ts'
export { predictionInterval } from './infer/predictionInterval.ts'
export type { QuantileEstimate, QuantileRanks, QuantileStatus } from './infer/quantileEstimate.ts'
export { quantileEstimate, quantileRanks, replicationsForQuantile } from './infer/quantileEstimate.ts'
export type { Precision, Stopping, StoppingStatus } from './infer/stopping.ts'
export { forecastReplications, stopAt, stoppingSentence } from './infer/stopping.ts'
export type { WindowInterval } from './infer/windowInterval.ts'
export { windowInterval } from './infer/windowInterval.ts'
// Input uncertainty
export type { VarianceSplit } from './input/varianceSplit.ts'
export { varianceSplit } from './input/varianceSplit.ts'
export { dirichletWeights, redrawnTriple, reweighted, weightedMeanVariance } from './input/weights.ts'
// Random streams
export type { Stream } from './random/stream.ts'
export { stream } from './random/stream.ts'
export { StreamTable } from './random/streamTable.ts'
// Selection
export type { BestRow, BestTable } from './select/bestTable.ts'
export { bestTable } from './select/bestTable.ts'
export type { KnChoice, KnElimination, KnOptions, KnRequest } from './select/kn.ts'
export { knConstants, knSelect, knSteps } from './select/kn.ts'
export type { CarrierAnswer, CountTable, PilotReference, ProcedureWStatus, TestedCount } from './select/procedureW.ts'
export { finalReplications, pilotReference, procedureW } from './select/procedureW.ts'
// Sequence of a mix
export { LevelledOrder, levelledOrder, mostBehind } from './sequence/levelled.ts'
export { quotas } from './sequence/quotas.ts'
export { wholeShares } from './sequence/wholeShares.ts'
// Special functions
export type { BetaPoint } from './special/betaQuantile.ts'
export { betaQuantile } from './special/betaQuantile.ts'
export { binomialCdf } from './special/binomialCdf.ts'
export { fQuantile } from './special/fQuantile.ts'
export { chiSquareQuantile, gammaQuantile } from './special/gammaQuantile.ts'
export type { Tails } from './special/incompleteBeta.ts'
export { betaTails, lnBeta } from './special/incompleteBeta.ts'
export { gammaP, gammaQ } from './special/incompleteGamma.ts'
export { lnGamma } from './special/lnGamma.ts'
export { erfc, normalCdf } from './special/normal.ts'
export { normalQuantile, normalQuantilesInto } from './special/normalQuantile.ts'
export { digamma, trigamma } from './special/polygamma.ts'
export { tQuantile } from './special/tQuantile.ts'
export type { StatisticsErrorCode } from './statisticsError.ts'
export { StatisticsError } from './statisticsError.ts'
// Warm-up
export type { RunEnd, WarmupCut, WarmupStatus } from './warmup/mser5.ts'
export { mser5, warmupSentence } from './warmup/mser5.ts'
export { welchCurve } from './warmup/welchCurve.ts'
