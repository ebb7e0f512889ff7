// Differences of samples of the same worlds
export { whyNotPairable } from '../infer/pairable.ts'
export type { RunKey } from '../infer/pairable.ts'
export { pairedDifference, pairedLowerLimit } from '../infer/pairedDifference.ts'
export type { PairedDifference, DifferenceStatus, PairedLowerLimit } from '../infer/pairedDifference.ts'
export { allPairs } from '../infer/allPairs.ts'
export type { ComparedPair } from '../infer/allPairs.ts'
export { againstFirst } from '../infer/againstFirst.ts'

// Means by what is known of chance
export { controlVariate } from '../infer/controlVariate.ts'
export type { Control, ControlledMean } from '../infer/controlVariate.ts'
export { shownControls, CONTROLS_FROM } from '../infer/shownControls.ts'
export type { ShownMean } from '../infer/shownControls.ts'
