// A time study
export { fences, drift, observationsNeeded } from './timeStudy.ts'
export type { Fences, Drift } from './timeStudy.ts'
export { lag1 } from '../accumulate/lag1.ts'
export { sampleQuantile } from '../accumulate/sampleQuantile.ts'

// A distribution for it
export { fitDuration, shiftFromData } from './durationFit.ts'
export type { DurationFit, Shift } from './durationFit.ts'
export { chooseDuration } from './chooseDuration.ts'
export type { DurationChoice, DurationCandidate } from './chooseDuration.ts'
export type { Family, FamilyParameters } from './family.ts'

// Whether it fits
export { goodness } from './goodness.ts'
export type { Goodness } from './goodness.ts'
export { bootstrapTest } from './bootstrapTest.ts'
export type { BootstrapTest } from './bootstrapTest.ts'
export { lognormalTest } from './lognormalTest.ts'
export type { LognormalTest } from './lognormalTest.ts'

// What is not known of the inputs
export { dirichletWeights, reweighted, weightedMeanVariance } from '../input/weights.ts'
export { doubtShares } from '../input/doubtShares.ts'
export type { DoubtShare } from '../input/doubtShares.ts'
export { varianceSplit } from '../input/varianceSplit.ts'
export type { VarianceSplit } from '../input/varianceSplit.ts'
export { doubtInterval, inputParts } from '../input/doubtInterval.ts'
export type { DoubtInterval, InputPart } from '../input/doubtInterval.ts'
