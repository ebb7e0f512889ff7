// Whether it does what was promised
export { trialBand } from './band.ts'
export type { TrialBand } from './band.ts'
export { testPlan } from './testPlan.ts'
export type { TestPlan, PlanRequest } from './testPlan.ts'
export { sequentialPlan, standingOf, TRIALS_LEAST } from './sequential.ts'
export type { SequentialPlan, TrialPaths, TrialStanding } from './sequential.ts'

// Weeks counted against a promise
export { followUp, stationDeviations, SHIFTS_LEAST } from './followUp.ts'
export type { FollowUpResult, JudgedWeek, RealWeek, PromiseState, MeasuredStation, StationDeviation } from './followUp.ts'
export { stopDeviations, waitDeviations } from './waitDeviations.ts'
export type { CountedStop, MeasuredWait, ModelStop, StopDeviation, WaitDeviation } from './waitDeviations.ts'
