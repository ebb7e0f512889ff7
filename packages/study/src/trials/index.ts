// Trials of an acceptance
export { runTrials, longerWork } from './runTrials.ts'
export { otherStops } from './otherStops.ts'
export type { StopFactors } from './otherStops.ts'
export { recalibrate } from './recalibrate.ts'
export type { Recalibration, RecalibrationRequest } from './recalibrate.ts'
export type { TrialsRequest, TrialsResult } from './runTrials.ts'
