// What a study tells
export type { Law, LawTerms } from '@loopwright/line'
export type { NotConfirmed, StationShares, SweepAnswer, SweepCount, SweepResult, ZoneShares } from './sweepResult.ts'
export type { RunsIntervals, RunsResult } from './runsResult.ts'
// How many carriers
export type { CarrierSweepOptions, SweepOptions, SweepProgress } from './carrierSweep.ts'
export { carrierSweep, sweepHere } from './carrierSweep.ts'
export { sweepAnswer } from './sweepAnswer.ts'
// Runs of one line
export type { ReplicateOptions, ReplicateThreadsOptions, TracedRun } from './replicate.ts'
export { replicate, replicateHere, tracedRun } from './replicate.ts'
export { runsResult } from './runsResult.ts'
export { withCarriers } from './withCarriers.ts'
// The line without running it
export type { LineFacts, StationFacts, StopFacts } from './lineFacts.ts'
export { lineFacts } from './lineFacts.ts'
export { workingSeconds } from './workingSeconds.ts'
export { CARRIER_STATES, lawTerms, STATION_STATES, TRACE_KINDS, ZONE_STATES } from '@loopwright/line'
// Threads
export type { Pool } from './pool.ts'
export type { TraceColumns } from './task.ts'
export { createPool } from './pool.ts'
export { ENGINE_VERSION } from './engineVersion.ts'
