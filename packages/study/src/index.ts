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
// Several lines in the same worlds
export type { LineRows, Runner, ThreadRunnerOptions, WorldRange } from './runner.ts'
export { hereRunner, threadRunner, unitsOf } from './runner.ts'
export type { ComparedLine, CompareRequest, CompareResult, LineToCompare } from './compareLines.ts'
export { compareLines } from './compareLines.ts'
export { scaledTimes } from './scaledTimes.ts'
export type { StartQuestion } from './startQuestion.ts'
export { startQuestion } from './startQuestion.ts'
// What drives a line
export type { Driver, DriverKind, DriverOptions } from './drivers.ts'
export { driversOf, TIME_KINDS } from './drivers.ts'
export type { DriverEffect, DriverRequest, DriverResult, Explanation } from './driverStudy.ts'
export { driverStudy } from './driverStudy.ts'
